import { randomInt } from 'node:crypto';
import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { replaceFile } from './durable-file.ts';
import { hasCode, ifPresent } from './system-error.ts';

/**
 * Below 32768, where Linux begins to hand out ports to outgoing connections: none of those may sit on our
 * port while the server is being started again.
 */
const LOWEST = 16_384;
const HIGHEST = 32_767;

/** The port of the last start when it is free, else a free one, remembered from now on. */
export async function choosePort(file: string): Promise<number> {
  const remembered = Number(await ifPresent(readFile(file, 'utf8')));
  if (remembered >= 1024 && remembered <= 65_535 && (await isFree(remembered))) return remembered;
  for (;;) {
    const port = randomInt(LOWEST, HIGHEST + 1);
    if (await isFree(port)) {
      await replaceFile(file, `${port}\n`, 0o644);
      return port;
    }
  }
}

export async function isFree(port: number): Promise<boolean> {
  const probe = createServer();
  try {
    probe.listen({ port, host: '127.0.0.1', exclusive: true });
    await once(probe, 'listening');
  } catch (error) {
    if (hasCode(error, 'EADDRINUSE', 'EACCES')) return false;
    throw error;
  }
  probe.close();
  await once(probe, 'close');
  return true;
}
