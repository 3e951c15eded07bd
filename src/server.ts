/**
 * The server: SvelteKit's request handler behind Node's own HTTP server, listening on this machine
 * only unless another host is asked for. Built to `build/server.js`, beside `build/handler.js`.
 */
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface ServeOptions {
  /** 0 takes any free port. */
  readonly port: number;
  readonly host: string;
}

export interface Serving {
  /** Where the page is: `http://127.0.0.1:4173/`. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/**
 * Starts the server.
 *
 * Fails   rejects with the system's error when the port is taken or may not be used
 */
export async function serve({ port, host }: ServeOptions): Promise<Serving> {
  // Without this header SvelteKit takes https for granted and refuses forms posted over http.
  process.env['PROTOCOL_HEADER'] ??= 'x-own-protocol';
  const handlerFile = './handler.js'; // made by the page's build; not there when this is bundled
  const { handler } = (await import(/* @vite-ignore */ handlerFile)) as {
    handler: RequestListener;
  };
  const server = createServer((request, response) => {
    request.headers['x-own-protocol'] = 'http';
    handler(request, response);
  });
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(port, host, done);
  });
  const { port: taken } = server.address() as AddressInfo;
  return {
    address: `http://${host.includes(':') ? `[${host}]` : host}:${taken}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      })
  };
}
