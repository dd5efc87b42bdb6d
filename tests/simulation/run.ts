import { desk, followed, rows } from './parts.ts';
import { sheets } from './sheets-part.ts';

type Part = (calls: number, seed: number) => Generator<string>;

/** Each part with as many calls as its shares need to be known within about .012. */
const PARTS: Readonly<Record<string, readonly [part: Part, calls: number]>> = {
  rows: [rows, 6000],
  followed: [followed, 3000],
  desk: [desk, 1500],
  sheets: [sheets, 600],
};

const [name, calls, seed = '11'] = process.argv.slice(2);
for (const each of name === undefined ? Object.keys(PARTS) : [name]) {
  const part = PARTS[each];
  if (part === undefined) {
    process.stderr.write(`No part "${each}". There are: ${Object.keys(PARTS).join(', ')}.\n`);
    process.exitCode = 1;
  } else {
    const [work, usual] = part;
    for (const line of work(calls === undefined ? usual : Number(calls), Number(seed)))
      process.stdout.write(`${line}\n`);
    process.stdout.write('\n');
  }
}
