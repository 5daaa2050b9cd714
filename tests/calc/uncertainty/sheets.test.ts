import { describe } from 'vitest';
import { sheets } from '../../../src/calc/uncertainty/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of uncertainty', () => sheetRules(sheets));
describe('formulas of uncertainty', () => formulaRules(sheets));
describe('units of uncertainty', () => unitRules(sheets));
