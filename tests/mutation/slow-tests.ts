/**
 * Tests that are not run for mutants: each takes a second or many, as it draws hundreds of engines or sends lists
 * of a hundred thousand. What only one of these would notice counts as not noticed, so that no score is too high.
 */
const SLOW = [
  // Anything in place of any field.
  /under fire$/,
  /whatever is sent$/,
  /anything in place of any field is answered or refused at its place$/,
  /any text is answered or refused, and long ones soon$/,
  // Shares and chances by drawing.
  /gap-scan-noise\.test\.ts#/,
  /gap-scan\/least\.test\.ts#a Monte Carlo/,
  /identify\/second-route\.test\.ts#probabilities by a second route rejection/,
  /explain-readings\/properties\.test\.ts#whatever is entered every number is finite/,
  /questions\/clean-engine\.test\.ts#/,
  /questions\/questions\.test\.ts#the questions of any readings/,
  /control-chart\.test\.ts#constants d2 and d3 of every size/,
  /capability\.test\.ts#the interval holds the true index in 19 of 20 lots/,
  /gap-scan-engines\.test\.ts#(?:scans of 60 invented engines|the bounds are no wider)/,
  /piston-to-valve-any-engine\.test\.ts#any engine no gap of a plain scan/,
];

export const isSlow = (id: string): boolean => SLOW.some((pattern) => pattern.test(id));
