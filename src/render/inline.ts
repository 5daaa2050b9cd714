import type { Element } from 'hast';
import { h } from 'hastscript';

/** A sentence of a finding: what stands between backticks is set as code. */
export function inline(text: string): (Element | string)[] {
  return text
    .split(/`([^`]*)`/)
    .map((part, i) => (i % 2 === 1 ? h('code', part) : part))
    .filter((part) => part !== '');
}
