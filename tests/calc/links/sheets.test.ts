import { describe } from 'vitest';
import { sheets } from '../../../src/calc/links/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of links', () => sheetRules(sheets));
describe('formulas of links', () => formulaRules(sheets));
describe('units of links', () => unitRules(sheets));
