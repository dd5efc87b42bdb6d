import demo from '../../../seeds/demo-catalogue.json' with { type: 'json' };
import type { FamilyEvidence } from '../../../server/mechanics/assessment/part/family.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

/** The demo catalogue in metres; all of it invented. */
export const DEMO_FAMILY_EVIDENCE: readonly FamilyEvidence[] = demo.families.map(
  ({ code, name, fits, ratio, weight, sizes, mount, tip, rings }) => ({
    id: code,
    code,
    name,
    fits,
    nominalRatio: ratio,
    weight,
    sizes: Object.fromEntries(Object.entries(sizes).map(([kind, size]) => [kind, size * IN])),
    features: { mount, tip, rings },
  }),
);
