import type { Element } from 'hast';
import { h } from 'hastscript';
import { bySeverity } from '../../checks/engine/severity.js';
import { type Failure, failures } from '../../checks/kinds/parts/failures.js';
import { anchor, joined, noteNumber, pointer } from '../anchors.js';
import { grouped } from '../grouped.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { type Row, table } from '../table.js';

/** For each kind of work in the build: how it can fail, what would come of it, and how the items that guard against it stand. */
export function failureRegister(subject: Subject): Element {
  const { build, rules } = subject;
  const kinds = grouped(
    build.notes.filter((n) => failures[n.kind]),
    (n) => n.kind,
  );
  const rows = kinds.flatMap((notes): Row[] => [
    {
      group: h('span', [
        h('b', rules.kinds.get(notes[0].kind)!.title),
        `: note${notes.length > 1 ? 's' : ''} `,
        ...joined(notes.map((n) => pointer(anchor.note(n.name), noteNumber(n.name)))),
      ]),
    },
    ...failures[notes[0].kind]!.map((failure) => [failure.fails, failure.effect, guards(failure, subject)]),
  ]);
  return h('section', { id: anchor.section('failures') }, [
    h('h2', 'What could fail'),
    h(
      'p',
      'Ways in which work of these kinds fails, what would come of it on the road, and the checklist items that guard against it, each with the most serious of its findings. Common practice without a published source; neither ranked nor complete: what else this car asks for is the certifier’s to say.',
    ),
    ...(rows.length > 0
      ? [
          table(
            'failures',
            'Failures, their effects and what guards against them',
            [
              ['What fails', 27],
              ['What would come of it', 28],
              ['What guards against it, and how it stands', 45],
            ],
            rows,
            { id: 'failures' },
          ),
        ]
      : []),
  ]);
}

function guards({ guards: ids }: Failure, { evaluation }: Subject): Element | string {
  const raised = ids.flatMap((id) => {
    const item = evaluation.raised.find((r) => r.item.id === id)?.item;
    const [worst] = evaluation.findings.filter((f) => f.item === id && f.outcome !== 'not-applicable').sort(bySeverity);
    const yesOrNo = /^answered `(yes|no)`/.exec(worst?.says ?? '')?.[1];
    return item && worst
      ? [
          h('span', [
            h('a.ref', { href: `#${anchor.item(id)}` }, item.title),
            ' ',
            outcomeMark(worst, false),
            ...(yesOrNo ? [`: ${yesOrNo}`] : []),
          ]),
        ]
      : [];
  });
  return raised.length > 0 ? h('span', joined(raised, h('br'))) : 'no item that applies to this build';
}
