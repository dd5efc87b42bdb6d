/** Each part of the bench is a script of its own; without a name, the routes are measured. */
const PARTS: Readonly<Record<string, () => Promise<unknown>>> = {
  routes: () => import('./routes.ts'),
  live: () => import('./live.ts'),
};

const name = process.argv[2] ?? 'routes';
const part = PARTS[name];
if (part === undefined) {
  process.stderr.write(`No part "${name}". There are: ${Object.keys(PARTS).join(', ')}.\n`);
  process.exitCode = 1;
} else await part();
