import { h } from 'hastscript';
import { describe, expect, test } from 'vitest';
import { pageDigits } from '../../src/render/page-digits.js';

describe('digits of the last page number', () => {
  test('are those of documents of which it is known how many pages they have', () => {
    const document = (characters: number, pictures: number, chapters: number) =>
      h('main', [
        h('p', 'x'.repeat(characters)),
        ...Array.from({ length: pictures }, () => h('img')),
        ...Array.from({ length: chapters }, (_, n) => h('h2', String(n))),
      ]);
    // Characters, pictures and chapters of printed documents, as counted, and their pages: 17, 74, 163, 344, 491.
    expect(
      [
        document(33_664, 0, 18),
        document(213_886, 0, 25),
        document(487_622, 0, 37),
        document(829_802, 125, 51),
        document(1_456_055, 200, 77),
      ].map(pageDigits),
    ).toEqual([2, 2, 3, 3, 3]);
  });

  test('count the words of a formula, and not its tags', () => {
    const formula = (tags: number) =>
      h('main', [{ type: 'raw', value: `${'<mi class="long">'.repeat(tags)}x</mi>` }] as never);
    expect([pageDigits(formula(1)), pageDigits(formula(100_000))]).toEqual([1, 1]);
  });
});
