import type { SetUpEvidence } from '../../evidence.ts';
import type { LobeDetail, PassKind } from './detail.ts';

const BY_INDICATOR = 3;

/** How often the lobe is read before anybody goes to the valve, by where its lift is from. */
const WANTED: Readonly<Record<SetUpEvidence['lobeSource'], number>> = {
  card: 0,
  indicator: BY_INDICATOR,
  caliper: 1,
  'depth-bar': 1,
  feeler: 1,
  rule: 1,
  guess: 1,
};

interface LobeOfSetUp {
  readonly setUp: Pick<SetUpEvidence, 'lobeSource'>;
  readonly lobe: Pick<LobeDetail, 'source' | 'entryIds'>;
}

/** A lobe that was read at the lifter, whatever the set-up was begun with, is read as often as one that was to be. */
export const lobePassesWanted = ({ setUp: { lobeSource }, lobe }: LobeOfSetUp): number =>
  WANTED[lobeSource === 'card' ? lobe.source : lobeSource];

/** What this set-up is read for next: nobody moves the indicator to the valve before the lobe has its passes. */
export const passToRead = (of: LobeOfSetUp): PassKind =>
  of.lobe.entryIds.length < lobePassesWanted(of) ? 'lobe-lift' : 'valve-lift';
