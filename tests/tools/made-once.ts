import type { Eta } from 'eta';
import { loadComputations, type Registered } from '../../server/compute/registry.ts';
import { type Assets, loadAssets } from '../../server/web/pages/assets.ts';
import { createViews } from '../../views/engine.ts';

interface MadeOnce {
  readonly computations: ReadonlyMap<string, Registered>;
  readonly views: Eta;
  readonly assets: Assets;
}

let made: Promise<MadeOnce> | undefined;

async function make(): Promise<MadeOnce> {
  return { computations: await loadComputations(), views: createViews(), assets: await loadAssets() };
}

/** What a process of the service makes at its start and never changes: made once for all the services of a test process. */
export function madeOnce(): Promise<MadeOnce> {
  made ??= make();
  return made;
}
