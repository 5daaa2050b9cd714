import type { Log } from 'sarif';
import { findingsJson } from '../../app/results/findings-json.js';
import { sarif } from '../../app/results/sarif.js';
import type { Evaluation, Rules } from '../../checks/engine/examine.js';
import { jsonText } from '../../platform/json-text.js';
import { tool } from '../../platform/tool.js';
import { jsonForm } from '../../project/format.js';
import type { Build } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { showProblem } from '../../project/show-problem.js';
import type { Io } from '../terminal/io.js';
import { summaryText } from './summary-text.js';

/** Prints one build after another; nothing is kept of a build that was printed, so that many take no more memory than one. */
export interface Printer {
  problems: (folder: string, problems: readonly Problem[]) => void;
  findings: (build: Build, evaluation: Evaluation, rules: Rules) => void;
  end: () => void;
}

export function printer(format: string, io: Io, all: boolean, several: boolean): Printer {
  if (format === 'text') return textPrinter(io, all);
  return format === 'json' ? jsonPrinter(io, several) : sarifPrinter(io);
}

function textPrinter(io: Io, all: boolean): Printer {
  return {
    problems: (folder, problems) =>
      io.stderr(
        `${problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${problems.length} problem(s) keep ${folder} from being read. Nothing was checked.\n`,
      ),
    findings: (build, evaluation) =>
      io.stdout(summaryText(build, evaluation, { all, width: io.columns ?? 100, colour: io.colour })),
    end: () => {},
  };
}

function jsonPrinter(io: Io, several: boolean): Printer {
  let before = several ? '[\n' : '';
  const put = (value: unknown) => {
    io.stdout(`${before}${jsonText(value)}`);
    before = ',\n';
  };
  return {
    problems: (build, problems) => put({ form: jsonForm('problems'), build, problems }),
    findings: (build, evaluation) => put(findingsJson(build, evaluation)),
    end: () => io.stdout(several ? `${before === '[\n' ? '[' : ''}\n]\n` : '\n'),
  };
}

/** One log with a run for each build. Notes that cannot be read are notifications of their run. */
function sarifPrinter(io: Io): Printer {
  const runs: Log['runs'] = [];
  const [name, version] = tool.split(' ');
  return {
    problems: (folder, problems) =>
      runs.push({
        tool: { driver: { name: name!, semanticVersion: version! } },
        automationDetails: { id: `${folder}/` },
        results: [],
        invocations: [
          {
            executionSuccessful: false,
            toolExecutionNotifications: problems.map((p) => ({
              level: 'error',
              descriptor: { id: p.code },
              message: { text: `found ${p.found}, expected ${p.expected}${p.hint ? `; ${p.hint}` : ''}` },
              locations: [
                {
                  physicalLocation: {
                    artifactLocation: { uri: p.file.split('/').map(encodeURIComponent).join('/') },
                    ...(p.line > 0 ? { region: { startLine: p.line, startColumn: Math.max(1, p.column) } } : {}),
                  },
                },
              ],
            })),
          },
        ],
      }),
    findings: (build, evaluation, rules) => runs.push(...sarif(build, evaluation, rules, { tool }).runs),
    end: () =>
      io.stdout(
        `${jsonText({ $schema: 'https://json.schemastore.org/sarif-2.1.0.json', version: '2.1.0', runs } satisfies Log)}\n`,
      ),
  };
}
