import { describe } from 'vitest';
import { sheets } from '../../../src/calc/fasteners/index.js';
import values from '../../reference/fasteners.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of fasteners and threads', () => referenceRules(sheets, values as never));
