import { createHash } from 'node:crypto';
import { posix } from 'node:path';
import type { Log, Notification, PhysicalLocation, ReportingDescriptor, Result } from 'sarif';
import type { Place } from '../../calc/value.js';
import { basisSays } from '../../checks/codes/limit.js';
import type { Doubt } from '../../checks/engine/doubts.js';
import type { Evaluation, Rules } from '../../checks/engine/examine.js';
import { type Finding, resultOf } from '../../checks/engine/finding.js';
import type { Build } from '../../project/model.js';
import type { ObsoleteUse } from '../../project/translate.js';
import type { Unread } from '../../project/unread.js';

/**
 * Findings as a SARIF 2.1.0 log (OASIS). Passes are recorded as well; only what does not conform is of kind `fail`, since
 * many readers take every failure for an error.
 */
export function sarif(
  build: Build,
  evaluation: Evaluation,
  rules: Rules,
  run: { tool: string; commit?: string | undefined; repository?: string | undefined },
): Log {
  const [name, version] = run.tool.split(' ');
  const ids = [...new Set(evaluation.findings.map((f) => f.item))].sort();
  const told = [
    ...evaluation.doubts.map(notificationOf),
    ...build.obsolete.map(obsoleteNotification),
    ...build.unread.map((one) => unreadNotification(one, posix.dirname(build.file))),
  ];
  return {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: { name: name!, semanticVersion: version!, rules: ids.map((id) => descriptor(id, rules, evaluation)) },
        },
        columnKind: 'utf16CodeUnits',
        automationDetails: { id: `${build.name}/`, description: { text: build.data.title } },
        ...(run.commit
          ? {
              versionControlProvenance: [
                { repositoryUri: run.repository ?? 'urn:gusset:local', revisionId: run.commit },
              ],
            }
          : {}),
        results: evaluation.findings.map((f) => sarifResult(f, ids)),
        ...(told.length > 0 ? { invocations: [{ executionSuccessful: true, toolExecutionNotifications: told }] } : {}),
      },
    ],
  };
}

/** Only a value that conforms is a pass; an answer, a picture or a date that is in order claims no more than that it is there. */
function kindOf({ outcome, waits }: Finding): Result['kind'] {
  if (waits !== undefined) return 'review';
  if (outcome === 'conforms') return 'pass';
  if (outcome === 'outside-usual-practice') return 'review';
  const kinds = {
    met: 'informational',
    against: 'fail',
    contradicted: 'fail',
    unclear: 'review',
    unconfirmed: 'open',
    partly: 'open',
    missing: 'open',
    out: 'notApplicable',
  } as const;
  return kinds[resultOf(outcome)];
}

function sarifResult(f: Finding, ids: readonly string[]): Result {
  const kind = kindOf(f);
  const level = kind !== 'fail' ? 'none' : f.limit?.recommended ? 'warning' : 'error';
  return {
    ruleId: f.item,
    ruleIndex: ids.indexOf(f.item),
    kind,
    level,
    message: {
      text: [f.says, f.marks.length > 0 ? `[${f.marks.join('; ')}]` : '', f.todo ? `To do: ${f.todo}.` : '']
        .filter(Boolean)
        .join(' '),
    },
    locations: [{ physicalLocation: location(f.place), logicalLocations: [{ fullyQualifiedName: f.id }] }],
    ...(f.related
      ? {
          relatedLocations: [{ id: 1, physicalLocation: location(f.related.place), message: { text: f.related.says } }],
        }
      : {}),
    partialFingerprints: { 'finding/v1': createHash('sha256').update(f.id).digest('hex').slice(0, 32) },
    ...(f.concession
      ? {
          suppressions: [
            {
              kind: 'inSource',
              status:
                f.concession.word === 'accepted'
                  ? 'accepted'
                  : f.concession.word === 'refused'
                    ? 'rejected'
                    : 'underReview',
              justification: f.concession.because,
            },
          ],
        }
      : {}),
    properties: {
      class: f.of,
      outcome: f.outcome,
      basis: f.basis,
      note: f.note,
      ...(f.subject ? { subject: f.subject } : {}),
    },
  };
}

/** A doubt is no result: nothing was checked, and nothing rests on it. */
const notificationOf = ({ place, found, expected, hint }: Doubt): Notification => ({
  level: 'note',
  descriptor: { id: 'improbable-value' },
  message: { text: `found ${found}, expected ${expected}; ${hint}` },
  locations: [{ physicalLocation: location(place) }],
});

const obsoleteNotification = (use: ObsoleteUse): Notification => ({
  level: 'warning',
  descriptor: { id: 'obsolete' },
  message: { text: `${use.found} is ${use.now}` },
  locations: [{ physicalLocation: location(use) }],
});

const unreadNotification = ({ path, what }: Unread, folder: string): Notification => ({
  level: 'warning',
  descriptor: { id: 'file-unread' },
  message: { text: `${what} that is not read, and not named by a note` },
  locations: [{ physicalLocation: location({ file: posix.join(folder, path), line: 0, column: 0 }) }],
});

function location({ file, line, column, endColumn }: Omit<Place, 'path'>): PhysicalLocation {
  const uri = file.split('/').map(encodeURIComponent).join('/');
  if (line < 1) return { artifactLocation: { uri } };
  return {
    artifactLocation: { uri },
    region: {
      startLine: line,
      startColumn: Math.max(1, column),
      ...(endColumn && endColumn > column ? { endColumn } : {}),
    },
  };
}

function descriptor(id: string, rules: Rules, evaluation: Evaluation): ReportingDescriptor {
  const item = rules.codes.items.get(id) ?? rules.ownItems.find((i) => i.id === id);
  const title = item?.title ?? evaluation.findings.find((f) => f.item === id)!.title;
  const rests = item && [item.rests.document, item.rests.edition, item.rests.clause].filter(Boolean).join(', ');
  return {
    id,
    shortDescription: { text: title },
    ...(item
      ? {
          fullDescription: { text: item.asks },
          help: { text: `${item.asks}\nRests on: ${rests} (${basisSays[item.rests.basis]}).` },
        }
      : {}),
  };
}
