import { visible } from '../platform/visible.js';
import type { Problem } from './problem.js';

/** `file:line:column: found …, expected …`, the line with a caret under the fault, and what to do. */
export function showProblem(p: Problem, width = 100): string {
  const where = p.line > 0 ? `${p.file}:${p.line}:${p.column}` : p.file;
  const head = `${where}: found ${visible(p.found)}, expected ${visible(p.expected)}`;
  const excerpt = p.line > 0 && p.source !== undefined && p.source.trim() !== '' ? caret(p, width) : [];
  const hint = p.hint ? [`    hint: ${visible(p.hint)}`] : [];
  return [head, ...excerpt, ...hint].join('\n');
}

function caret(p: Problem, width: number): string[] {
  const room = Math.max(30, width - 10);
  const source = (p.source ?? '').replaceAll('\t', ' ');
  const from = Math.max(0, Math.min(p.column - 1 - Math.floor(room / 2), source.length - room));
  const piece = source.slice(from, from + room);
  const length = Math.max(1, Math.min((p.endColumn ?? p.column + 1) - p.column, piece.length - (p.column - 1 - from)));
  const gutter = String(p.line).padStart(5);
  return [
    `${gutter} | ${visible(piece)}`,
    `      | ${' '.repeat(Math.max(0, p.column - 1 - from))}${'^'.repeat(length)}`,
  ];
}
