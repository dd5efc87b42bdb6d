import { setTimeout as pause } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { dataFolder, postmasterPid, waitUntilGone } from '../tools/embedded-bench.ts';
import { type Reader, startReader } from '../tools/persistent-reader.ts';
import { freePort, type Spawned, spawnService } from '../tools/spawn-service.ts';

/**
 * The real service and its own PostgreSQL are killed (SIGKILL) at random moments while a client keeps readings
 * and sends each again with the same key until it is acknowledged. Two rounds of three kill the service, the
 * third the postmaster; every sixth kills both. KILL_ROUNDS sets the number (4 unless set: what fits 45 s).
 */
const ROUNDS = Number(process.env.KILL_ROUNDS ?? '4');
const ROUND_MS = 60_000;

async function killService(service: Spawned): Promise<void> {
  await service.end('SIGKILL');
}

async function killPostmaster(dataDir: string): Promise<void> {
  const pid = await postmasterPid(dataDir);
  process.kill(pid, 'SIGKILL');
  await waitUntilGone(pid);
}

/** Every reading of the build by the text it was typed as, with how often it is there. */
async function kept(base: string, reader: Reader): Promise<Map<string, number>> {
  const response = await fetch(`${base}/api/v1/builds/${reader.buildId}/readings`, {
    headers: { authorization: reader.authorization },
  });
  const found = (await response.text()).matchAll(/"typed":"([\d.]+ thou)"/g);
  const counts = new Map<string, number>();
  for (const [, typed = ''] of found) counts.set(typed, (counts.get(typed) ?? 0) + 1);
  return counts;
}

test(
  `${ROUNDS} rounds of kill -9: each acknowledged reading is there exactly once, and it starts again`,
  async () => {
    const dataDir = await dataFolder();
    const port = await freePort();
    const start = () => spawnService({ DATA_DIR: dataDir, PORT: String(port), LOG_LEVEL: 'error' });
    let service = await start();
    onTestFinished(() => killService(service).catch(() => undefined));
    const reader = await startReader(service.base, service.said());
    onTestFinished(() => reader.stop());

    for (let round = 1; round <= ROUNDS; round += 1) {
      const before = reader.acknowledged.size;
      await expect.poll(() => reader.acknowledged.size, { timeout: ROUND_MS }).toBeGreaterThan(before + 2);
      await pause(Math.random() * 300);
      const postmaster = round % 3 === 0;
      const both = round % 6 === 0;
      if (postmaster) await killPostmaster(dataDir);
      if (!postmaster || both) {
        await killService(service);
        service = await start();
      }
    }
    // Whatever was under way at the last kill is settled by the client's own repeats.
    const last = reader.acknowledged.size;
    await expect.poll(() => reader.acknowledged.size, { timeout: ROUND_MS }).toBeGreaterThan(last + 2);
    await reader.stop();

    const counts = await kept(service.base, reader);
    const missing = [...reader.acknowledged].filter((typed) => !counts.has(typed));
    const doubled = [...counts].filter(([, times]) => times !== 1);
    process.stdout.write(
      `${ROUNDS} rounds: ${reader.acknowledged.size} acknowledged, ${reader.lost()} answers lost on the way, ` +
        `${counts.size} kept, ${missing.length} missing, ${doubled.length} doubled\n`,
    );
    expect(missing).toEqual([]);
    expect(doubled).toEqual([]);
    expect(counts.size, 'nothing is there that was not acknowledged').toBe(reader.acknowledged.size);
    expect(reader.refused(), 'what is no lost connection must be no refusal either').toEqual([]);
    // The kills must have hit something for this test to mean anything.
    expect(reader.lost()).toBeGreaterThan(0);
    const { code } = await service.end('SIGTERM');
    expect(code).toBe(0);
  },
  60_000 + ROUNDS * ROUND_MS,
);
