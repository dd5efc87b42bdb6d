import table from '../../../seeds/setting.json' with { type: 'json' };
import { IN } from '../kit/si.ts';

/**
 * Most plungers go no further than this from their clip to their bottom [m]: turns that press one further, where nobody
 * said how far its maker lets it go, may have put it on its bottom.
 *
 * Source: `plungerTravel` of the settings table, with its source.
 */
export const USUAL_TRAVEL = table.plungerTravel.most * IN;
