import { expect, test } from 'vitest';
import { dataFolder, postmasterPid, readings, waitUntilGone, writeReading } from '../tools/embedded-bench.ts';
import { startHolder } from '../tools/embedded-holder.ts';

test('two services started at once on a new folder share one server, and the last to end stops it', async () => {
  const dataDir = await dataFolder();
  const both = await Promise.all([startHolder(dataDir), startHolder(dataDir)]);
  expect(both.map((service) => service.adopted).sort()).toEqual([false, true]);
  expect(both[0].ownerUrl).toBe(both[1].ownerUrl);
  const pid = await postmasterPid(dataDir);

  // The one that started it ends first: the other must not lose its server.
  const [starter, guest] = both[0].adopted ? [both[1], both[0]] : both;
  await writeReading(starter.ownerUrl, '.600');
  await starter.stop();
  expect(await readings(guest.ownerUrl)).toEqual(['.600']);
  expect(await postmasterPid(dataDir)).toBe(pid);

  await guest.stop();
  await waitUntilGone(pid);
}, 40_000);
