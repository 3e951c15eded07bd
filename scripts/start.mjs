// npm start: installs and builds what is missing or out of date, then serves the worksheets/ folder
// (or the folder named after `--`) on this machine only.
//   PORT=NUMBER   exactly that port; else 4173 or the next free one
import { spawn } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';
import { join, resolve } from 'node:path';
import { Stopped, build, freePort, install, main, root } from './common.mjs';

/** Whether the server at this address answers; any status counts. */
async function answers(address) {
  try {
    await fetch(address);
    return true;
  } catch {
    return false; // not listening yet
  }
}

function portFromEnvironment() {
  const text = process.env.PORT;
  if (text === undefined || text === '') return null;
  const port = Number(text);
  if (Number.isInteger(port) && port > 0 && port < 65536) return port;
  throw new Stopped(`PORT is "${text}"; expected a whole number from 1 to 65535.`);
}

await main(async () => {
  const wanted = portFromEnvironment();
  await install();
  await build();

  const port = wanted ?? (await freePort(4173));
  const address = `http://127.0.0.1:${port}/`;
  const folder = resolve(process.argv[2] ?? join(root, 'worksheets'));
  const server = spawn(
    process.execPath,
    [join(root, 'build', 'cli.js'), 'serve', folder, '--port', String(port)],
    { stdio: ['ignore', 'pipe', 'inherit'], env: process.env }
  );

  let isReady = false;
  const announce = () => {
    if (!isReady) console.log(`Ready at ${address}`);
    isReady = true;
  };
  // The server says where it listens in words of its own; one such line is enough.
  server.stdout.setEncoding('utf8').on('data', (text) => {
    if (!text.includes(address)) process.stdout.write(text);
    else announce();
  });

  let hasEnded = false;
  server.on('close', (status) => {
    hasEnded = true;
    process.exitCode = isReady ? (status ?? 0) : status || 1;
    if (!isReady) console.error(`The server ended before it answered (status ${status}).`);
  });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
  // Ending npm alone leaves this script behind under another parent; the server must not live on.
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid !== parent) server.kill();
  }, 500);
  server.on('close', () => clearInterval(watch));

  while (!isReady && !hasEnded) {
    if (await answers(address)) announce();
    else await wait(50);
  }
});
