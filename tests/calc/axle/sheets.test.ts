import { describe } from 'vitest';
import { sheets } from '../../../src/calc/axle/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of axle', () => sheetRules(sheets));
describe('formulas of axle', () => formulaRules(sheets));
describe('units of axle', () => unitRules(sheets));
