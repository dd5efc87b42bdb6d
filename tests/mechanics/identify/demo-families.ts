import demo from '../../../seeds/demo-catalogue.json' with { type: 'json' };
import type { Family } from '../../../server/mechanics/identify/types.ts';

/** The demo catalogue as the mechanics see it; all of it invented. */
export const DEMO_FAMILIES: readonly Family[] = demo.families.map(
  ({ code, weight, sizes, mount, tip, rings }) => ({
    id: code,
    weight,
    sizes,
    features: { mount, tip, rings },
  }),
);

/** The families whose code names the same line, such as all of `DEMO-MEL`. */
export const lineOf = (family: Family) => family.id.split('-').slice(0, 2).join('-');
