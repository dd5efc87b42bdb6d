import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Eta } from 'eta';
import { escapeFunction, wholeFigures } from './whole-figures.ts';

/** The folder that every template is named from. */
export const VIEWS = fileURLToPath(new URL('.', import.meta.url));

/** How the engine builds `include` by itself: what the including page holds is laid under the part's data. */
const LEAKING = '{...it, ...(__eta_d ?? {})}';

/**
 * Gives an included part its own data and nothing else. Without this a page's `title`, `id` or `error`
 * turns up in every part that leaves its own one out: two elements with one id, a fault beside a field
 * that has none.
 */
const sealedIncludes = {
  processFnString(source: string): string {
    if (!source.includes(LEAKING))
      throw new Error('The template engine builds includes in a new way; see views/engine.ts');
    return source.replaceAll(LEAKING, '(__eta_d ?? {})');
  },
};

/** Where a template is, by its name: from the views folder, so that it is the same whoever includes it. */
function pathsByName(): (name: string) => string {
  const paths = new Map<string, string>();
  return (name) => {
    const known = paths.get(name);
    if (known !== undefined) return known;
    if (!name.startsWith('/') || name.includes('..'))
      throw new Error(`Template ${name} is not named from the views folder`);
    const path = join(VIEWS, name.endsWith('.eta') ? name : `${name}.eta`);
    paths.set(name, path);
    return path;
  };
}

/** The template engine over the views folder: every `<%= %>` escaped, data is `it`, compiled once. */
export function createViews(): Eta {
  const eta = new Eta({
    views: VIEWS,
    autoEscape: true,
    useWith: false,
    cache: true,
    escapeFunction,
    plugins: [sealedIncludes, wholeFigures],
  });
  // The engine's own way makes a JSON text of the including file and the name at each include of each page.
  eta.resolvePath = pathsByName();
  return eta;
}
