import { describe } from 'vitest';
import { sheets } from '../../../src/calc/mass/index.js';
import values from '../../reference/mass.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of mass', () => referenceRules(sheets, values as never));
