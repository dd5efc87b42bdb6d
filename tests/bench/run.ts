/** Each part of the bench is a script of its own. */
const PARTS: Readonly<Record<string, () => Promise<unknown>>> = {
  routes: () => import('./routes.ts'),
  growth: () => import('./growth.ts'),
  start: () => import('./start.ts'),
  messages: () => import('./messages.ts'),
  live: () => import('./live.ts'),
};
/** Without a name these run; `live` takes a minute of full load and is asked for by its name. */
const WITHOUT_NAME = ['routes', 'growth', 'start'];

const name = process.argv[2];
for (const each of name === undefined ? WITHOUT_NAME : [name]) {
  const part = PARTS[each];
  if (part === undefined) {
    process.stderr.write(`No part "${each}". There are: ${Object.keys(PARTS).join(', ')}.\n`);
    process.exitCode = 1;
  } else {
    await part();
    process.stdout.write('\n');
  }
}
