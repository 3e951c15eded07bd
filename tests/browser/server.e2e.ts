/** What the server lets in and what it sends with every answer. */
import { request } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, inject, test } from 'vitest';
import { root } from '../../scripts/common.mjs';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

function ask(
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
  body = ''
): Promise<Answer> {
  const address = new URL(inject('serverAddress'));
  return new Promise((done, fail) => {
    const call = request(
      {
        host: address.hostname,
        port: address.port,
        path,
        method,
        headers: { host: address.host, ...headers }
      },
      (response) => {
        let text = '';
        response.setEncoding('utf8').on('data', (part: string) => (text += part));
        response.on('end', () =>
          done({ status: response.statusCode ?? 0, headers: response.headers, body: text })
        );
      }
    );
    call.on('error', fail).end(body);
  });
}

test.each(['evil.example', 'evil.example:80', '127.0.0.1.evil.example', '192.168.1.5', '%'])(
  'a request that names the host %j is refused: no foreign name reaches the worksheets',
  async (host) => {
    const answer = await ask('/', { host });
    expect(answer.status).toBe(421);
    expect(answer.body).not.toContain('Whirling');
  }
);

test('localhost is this machine too', async () => {
  expect((await ask('/', { host: 'localhost:9' })).status).toBe(200);
});

test('the policy allows no script but the page’s own file, and no style element', async () => {
  const { headers, body } = await ask('/worksheets/spray-arm-rig');
  const policy = String(headers['content-security-policy']);
  expect(policy).toContain("default-src 'self'");
  expect(policy).toContain("object-src 'none'");
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toMatch(
    /unsafe-eval|script-src[^;]*unsafe-inline|style-src [^;]*unsafe-inline/
  );
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(body.match(/<script[^>]*>/g)).toEqual(['<script src="/enhance.js" defer>']);
  expect(body).not.toMatch(/<style|\son[a-z]+=/);
});

test.each([
  '/worksheets/..%2f..%2fpackage.json',
  '/worksheets/%2e%2e%2fpackage',
  '/worksheets/spray-arm-rig/beside/..%2f..%2fpackage.json',
  '/worksheets/spray-arm-rig/beside/%2e%2e/%2e%2e/etc/passwd',
  '/worksheets/spray-arm-rig/beside/spray-arm-rig.md',
  '/worksheets/x%00',
  '/worksheets/con'
])('%s gives nothing away', async (path) => {
  const answer = await ask(path);
  expect([404, 422]).toContain(answer.status);
  expect(answer.body).not.toMatch(/"dependencies"|root:|front matter|rigwright-e2e/);
});

test.each(['//evil.example/', 'https://evil.example/', '/\\evil.example', 'javascript:alert(1)'])(
  'after a choice of theme nobody is sent to %s',
  async (back) => {
    const origin = inject('serverAddress').replace(/\/$/, '');
    const headers = { 'content-type': 'application/x-www-form-urlencoded', origin };
    const answer = await ask(
      '/theme',
      headers,
      'POST',
      `theme=dark&back=${encodeURIComponent(back)}`
    );
    expect(answer.status).toBe(303);
    expect(answer.headers['location']).toBe('/');
  }
);

test('a form from a foreign page changes nothing', async () => {
  const headers = {
    'content-type': 'application/x-www-form-urlencoded',
    origin: 'https://evil.example'
  };
  const answer = await ask('/theme', headers, 'POST', 'theme=dark&back=/');
  expect(answer.status).toBe(403);
});

describe('other hosts than loopback', () => {
  interface Running {
    readonly address: string;
    readonly close: () => Promise<void>;
  }
  type Start = (options: {
    folder: string;
    port: number;
    host?: string;
    secret?: string;
  }) => Promise<Running>;
  const built = async (): Promise<Start> => {
    const place = pathToFileURL(join(root, 'build', 'server.js')).href;
    return ((await import(/* @vite-ignore */ place)) as { startServer: Start }).startServer;
  };

  test('are not served without a secret', async () => {
    const start = await built();
    await expect(
      start({ folder: inject('servedFolder'), port: 0, host: '0.0.0.0' })
    ).rejects.toThrow('needs a secret');
  });

  test('are served to who sends the secret, and to nobody else', async () => {
    const start = await built();
    const secret = 'a secret of words';
    const running = await start({
      folder: inject('servedFolder'),
      port: 0,
      host: '0.0.0.0',
      secret
    });
    const port = new URL(running.address).port;
    const statusWith = async (authorization?: string): Promise<number> => {
      const headers = authorization === undefined ? {} : { authorization };
      return (await fetch(`http://127.0.0.1:${port}/`, { headers })).status;
    };
    const basic = (words: string): string => `Basic ${Buffer.from(words).toString('base64')}`;
    expect(await statusWith()).toBe(401);
    expect(await statusWith(basic('me:wrong'))).toBe(401);
    expect(await statusWith(basic(secret))).toBe(200);
    expect(await statusWith(basic(`me:${secret}`))).toBe(200);
    expect(await statusWith(`Bearer ${secret}`)).toBe(401);
    await running.close();
  });
});
