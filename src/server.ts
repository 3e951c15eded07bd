/**
 * The server: SvelteKit's request handler behind Node's own HTTP server, listening on this machine
 * only unless another host is asked for. Requests must name a host of ours, so that a foreign page
 * cannot reach the worksheets through a name of its own that points here (DNS rebinding); any host
 * but loopback needs a secret besides. Built to `build/server.js`, beside `build/handler.js`.
 */
import { createHash, timingSafeEqual } from 'node:crypto';
import { existsSync } from 'node:fs';
import { createServer, type IncomingMessage, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface ServerOptions {
  /** Folder of the worksheets. */
  readonly folder: string;
  /** 0 takes any free port. */
  readonly port: number;
  /** 127.0.0.1 unless told otherwise. */
  readonly host?: string;
  /** Asked for as the password of HTTP Basic (RFC 7617, any user name); needed off loopback. */
  readonly secret?: string;
}

export interface RunningServer {
  /** Where the page is: `http://127.0.0.1:4173/`. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

const loopback = new Set(['127.0.0.1', '::1', 'localhost']);

const inUrl = (host: string): string => (host.includes(':') ? `[${host}]` : host);

/** The host of a Host header, without port and brackets; null where there is none. */
function hostOf(request: IncomingMessage): string | null {
  const header = request.headers.host;
  if (header === undefined) return null;
  try {
    return new URL(`http://${header}`).hostname.replace(/^\[|\]$/g, '');
  } catch {
    return null; // not a host at all: refused like a foreign one
  }
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Whether the request carries the secret; compared in equal time, by digest. */
function carries(request: IncomingMessage, secret: string): boolean {
  const [scheme, code] = (request.headers.authorization ?? '').split(' ');
  if (scheme?.toLowerCase() !== 'basic' || code === undefined) return false;
  const pair = Buffer.from(code, 'base64').toString('utf8');
  const password = pair.slice(pair.indexOf(':') + 1);
  return timingSafeEqual(digest(password), digest(secret));
}

/** The page's own build beside this file, or one folder up when this file is a chunk. */
function handlerPlace(): string {
  const places = ['./handler.js', '../handler.js'].map(
    (name) => new URL(name, import.meta.url).href
  );
  const place = places.find((url) => existsSync(fileURLToPath(url)));
  if (place === undefined)
    throw new Error('build/handler.js is missing; `npm run build` makes it.');
  return place;
}

/**
 * Starts the server.
 *
 * Fails   rejects with a RangeError for a host that is not loopback and no secret, with the system's
 *         error when the port is taken or may not be used
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { folder, port, host = '127.0.0.1', secret } = options;
  const isLoopback = loopback.has(host);
  if (!isLoopback && !secret) {
    throw new RangeError(`Serving on ${host} needs a secret; only 127.0.0.1 is open without one.`);
  }
  const place = handlerPlace();
  // The page reads these when its handler is loaded, just below.
  process.env['RIGWRIGHT_FOLDER'] = resolve(folder);
  process.env['RIGWRIGHT_SHARED'] = fileURLToPath(new URL('../shared', place));
  // Without this header SvelteKit takes https for granted and refuses forms posted over http.
  process.env['PROTOCOL_HEADER'] ??= 'x-own-protocol';
  const { handler } = (await import(/* @vite-ignore */ place)) as { handler: RequestListener };

  const server = createServer((request, response) => {
    const refuse = (status: number, sentence: string): void => {
      response
        .writeHead(status, { 'content-type': 'text/plain; charset=utf-8' })
        .end(`${sentence}\n`);
    };
    const asked = hostOf(request);
    // Off loopback the secret is the guard, and the names under which the host is known are not ours to list.
    if (asked === null || (isLoopback && !loopback.has(asked))) {
      refuse(421, 'This server answers only to requests for this machine.');
      return;
    }
    if (secret && !carries(request, secret)) {
      response.setHeader('WWW-Authenticate', 'Basic realm="Rigwright", charset="UTF-8"');
      refuse(401, 'This server asks for its secret as the password.');
      return;
    }
    request.headers['x-own-protocol'] = 'http';
    handler(request, response);
  });
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(port, host, done);
  });
  const { port: taken } = server.address() as AddressInfo;
  return {
    address: `http://${inUrl(host)}:${taken}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      })
  };
}
