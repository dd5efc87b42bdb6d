import { defined } from '../../../../shared/defined.ts';
import type { PartSubject } from '../assessment.ts';
import { byId } from '../common/said.ts';
import type { Evidence, HandPartEvidence, PartEvidence } from '../evidence.ts';

/** One of the parts in the hand, with what was read of it. */
export interface InHand {
  readonly about: PartSubject;
  /** What its ids begin with: `part`, and for every part but the first its own id too. */
  readonly key: string;
  readonly armId?: string;
  /** Readings that stand, in an order that does not hang on their entry. */
  readonly readings: readonly PartEvidence[];
}

const FIRST_OF_SEVERAL = 'the first part';

const byName = (a: HandPartEvidence, b: HandPartEvidence): number =>
  a.name < b.name ? -1 : a.name > b.name ? 1 : 0;

/** The first part stands first, unless nothing is known of it and others are there; then by their names. */
export function partsInHand({ part, handParts = [] }: Evidence): InHand[] {
  const others = handParts.filter(({ id }) => id !== undefined).toSorted(byName);
  const named = handParts.find(({ id }) => id === undefined);
  const of = (id: string | undefined) =>
    part.filter((each) => each.standing && each.partId === id).toSorted(byId);
  const first = of(undefined);
  const hasFirst = named !== undefined || first.length > 0 || others.length === 0;
  const name = named?.name ?? (others.length === 0 ? undefined : FIRST_OF_SEVERAL);
  return [
    ...(hasFirst
      ? [
          {
            about: { of: 'part' as const, ...defined({ name }) },
            key: 'part',
            ...defined({ armId: named?.armId }),
            readings: first,
          },
        ]
      : []),
    ...others.map((other) => ({
      about: { of: 'part' as const, name: other.name, ...defined({ partId: other.id }) },
      key: `part:${other.id}`,
      ...defined({ armId: other.armId }),
      readings: of(other.id),
    })),
  ];
}
