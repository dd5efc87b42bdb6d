import type { Component } from '../../../views/parts/components.ts';
import { runComponents, sectionComponent } from '../../call/report-parts.ts';
import { specFacts } from '../../call/spec/spec-facts.ts';
import type { Build } from '../../records/builds/builds.ts';
import { noticeComponent } from '../../web/components.ts';

/** Everything known of the build, group by group. */
export function buildReport({ spec, revision }: Build): Component {
  const groups = specFacts(spec);
  return sectionComponent(
    `The build, revision ${revision}`,
    groups.length === 0
      ? [noticeComponent('Nothing of the build is entered yet.')]
      : groups.flatMap(({ legend, facts }) => runComponents(legend, facts)),
  );
}
