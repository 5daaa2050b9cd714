import { describe, expect, it } from 'vitest';
import { sheets as axle } from '../../src/calc/axle/index.js';
import { sheets as driveline } from '../../src/calc/driveline/index.js';
import { plainTex } from '../../src/calc/plain-tex.js';
import { sheets as sections } from '../../src/calc/sections/index.js';

describe('formulas as plain text', () => {
  it.each([
    ['\\frac{T_r}{b}', 'T_r / b'],
    ['\\frac{\\pi}{4} \\cdot {B}^2 \\cdot {S}', 'π / 4 · B² · S'],
    ['\\frac{\\pi}{4} \\cdot {86 mm}^2', 'π / 4 · (86 mm)²'],
    ['\\frac{D_n - D_o}{2}', '(D_n − D_o) / 2'],
    ['\\frac{n}{i_G \\cdot i_A}', 'n / (i_G · i_A)'],
    ['\\sqrt{\\sum u_i^2}', '√(Σ u_i²)'],
    ['\\sqrt{n}', '√n'],
    ['\\frac{\\pi}{32} \\left(D^4 - d^4\\right)', '(π / 32) (D⁴ − d⁴)'],
    ['10 \\lg\\left(10^{L_m/10} - 10^{L_b/10}\\right)', '10 lg (10^(L_m/10) − 10^(L_b/10))'],
    ['\\arcsin\\frac{H}{L}', 'arcsin (H / L)'],
    ['\\min_i (D_i - d_i)', 'min_i (D_i − d_i)'],
    ['\\frac{v}{1 \\text{ rev}}', 'v / (1 rev)'],
    ['a \\cdot \\frac{b}{c}', 'a · b / c'],
    ['\\left|\\theta_1 - \\theta_2\\right|', '|θ_1 − θ_2|'],
    ['\\operatorname{round}(S \\cdot R_a)', 'round(S · R_a)'],
    ['\\bar{x}', 'x\u0304'],
    ['\\begin{cases} a & b > 1 \\\\ c & b < 1 \\end{cases}', 'a where b > 1; c where b < 1'],
  ])('%s is %s', (tex, text) => {
    expect(plainTex(tex)).toBe(text);
  });

  it('leaves no TeX behind in any formula of the richest subjects', () => {
    for (const sheet of [...axle, ...driveline, ...sections]) {
      for (const { tex, symbol } of Object.values(sheet.results)) {
        const text = plainTex((tex ?? '').replaceAll(/@(\w+)/g, '{$1}')) + plainTex(symbol);
        expect(text, `${sheet.id}: ${tex}`).not.toMatch(/[\\{}]/);
        expect(text.split('(').length, text).toBe(text.split(')').length);
      }
    }
  });
});
