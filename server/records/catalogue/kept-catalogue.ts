import { KeptFew } from '../../../shared/kept-few.ts';
import type { Tx } from '../../database/database.ts';
import {
  type CatalogueState,
  type FamilyRow,
  isInState,
  type PartFamily,
  selectCatalogueState,
  selectFamilies,
  toFamily,
} from './families.ts';

/*
 * A long catalogue is read once and not with every page: the process says which state of it it has, and the rows come
 * only where the shop's is another one. Both are asked in one message, so that nothing can come between.
 */

export interface KeptCatalogue {
  readonly state: CatalogueState;
  readonly families: readonly PartFamily[];
}

const MOST_SHOPS = 20;
const kept = new KeptFew<KeptCatalogue>(MOST_SHOPS);

export const keptCatalogue = (shopId: string): KeptCatalogue | undefined => kept.get(shopId);

/** The rows of the shop's catalogue; none where it is in the state that is known. */
export function selectUnknown(tx: Tx, shopId: string, known: KeptCatalogue | undefined) {
  const families = selectFamilies(tx, shopId);
  if (known === undefined) return families;
  const inState = selectCatalogueState(tx, shopId).having(isInState(known.state));
  return families.where(({ not, exists }) => not(exists(inState)));
}

/** The catalogue that these rows and what was known before they were asked for come to. */
export function catalogueOfRows(
  shopId: string,
  { states, rows }: { readonly states: readonly CatalogueState[]; readonly rows: readonly FamilyRow[] },
  known: KeptCatalogue | undefined,
): readonly PartFamily[] {
  const [state] = states;
  if (state === undefined) throw new Error('the state of the catalogue was not read along');
  // Empty, or not asked for.
  if (state.lines === 0) return [];
  if (known !== undefined && known.state.lines === state.lines && known.state.changed === state.changed)
    return known.families;
  const families = rows.map(toFamily);
  kept.set(shopId, { state, families });
  return families;
}
