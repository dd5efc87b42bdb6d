import type { Evidence } from '../evidence.ts';

/** Ratios that the arms of this build are sold as, or planned with, each once: a sum may have been made with any of them. */
export const ratiosOfBuild = ({ rockers }: Pick<Evidence, 'rockers'>): number[] => {
  const { soldAs, planned, plannedExhaust, alsoPlanned = [] } = rockers;
  return [...new Set([soldAs, planned, plannedExhaust, ...alsoPlanned].flatMap((ratio) => ratio ?? []))];
};
