import table from '../../../seeds/ordinary-sizes.json' with { type: 'json' };

/** A common stem [in], where nobody said what this one measures; a drawing with it says so. */
export const DRAWN_STEM = table.drawnStem.value;
