import { describe } from 'vitest';
import { sheets } from '../../../src/calc/gearing/index.js';
import values from '../../reference/gearing.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of gearing', () => referenceRules(sheets, values as never));
