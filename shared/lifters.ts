/** Hydraulic, flat or roller: it has no lash, and it sinks under a reading. Undefined where nobody said. */
export const isHydraulicLifter = (lifter: string | undefined): boolean =>
  lifter?.startsWith('hydraulic') === true;

/** Solid, flat or roller. */
export const isSolidLifter = (lifter: string | undefined): boolean => lifter?.startsWith('solid') === true;
