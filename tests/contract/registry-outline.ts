import { loadComputations } from '../../server/compute/registry.ts';
import { type Outline, outline } from './outline.ts';

export interface Entry {
  readonly name: string;
  readonly inputs: Outline;
  readonly outputs: Outline;
}

/** What every computation takes and gives, as its registration publishes it. */
export async function registryOutline(): Promise<Entry[]> {
  return [...(await loadComputations()).values()].map(({ name, inputSchema, outputSchema }) => ({
    name,
    inputs: outline(inputSchema),
    outputs: outline(outputSchema),
  }));
}
