import { holdPointsOf, type Kind } from '../checks/engine/kind.js';
import { spellings } from '../checks/engine/shown.js';
import { coveredOn } from '../checks/engine/stages.js';
import type { Stage } from '../project/common.js';
import type { Plain } from '../project/frontmatter.js';
import type { Note } from '../project/model.js';

/** The stage from which something can be measured no more, and its day. */
export interface Covered {
  stage: Stage;
  on: string;
}

/**
 * When the work covered what a field measures: once the hold points of the stage in which it was measured are covered.
 * That stage is the one of the photo that the value names, or `as-received` for what stood under `was`; a value that
 * names neither counts as covered when all the later hold points of its kind are. Plans are never covered.
 */
export function coveredBy(field: string, note: Note, kind: Kind): Covered | undefined {
  const path = field.split('.');
  if (path.includes('planned')) return undefined;
  const during = stageOfPhoto(path, note) ?? (path.includes('was') ? 'as-received' : undefined);
  const all = holdPointsOf(kind, note);
  const ofStage = all.filter((point) => point.during === during);
  const points =
    during === 'as-received' || ofStage.length > 0 ? ofStage : all.filter((point) => point.during !== 'as-received');
  const days = points.map((point) => coveredOn(point.before, note));
  if (!days.every((day) => day !== undefined)) return undefined;
  return days.sort((a, b) => (a.on < b.on ? -1 : 1)).at(-1);
}

function stageOfPhoto(path: readonly string[], note: Note): Stage | undefined {
  const value = valueAt(note.front.data, path);
  const named = typeof value === 'object' && !Array.isArray(value) ? value['photo'] : undefined;
  return typeof named === 'string'
    ? note.data.photos?.find((photo) => spellings(photo).includes(named))?.stage
    : undefined;
}

function valueAt(data: Plain, path: readonly string[]): Plain | undefined {
  return path.reduce<Plain | undefined>((here, key) => {
    if (Array.isArray(here))
      return here.find(
        (item, i) => (typeof item === 'object' && !Array.isArray(item) && item['id'] === key) || String(i + 1) === key,
      );
    return typeof here === 'object' ? here[key] : undefined;
  }, data);
}
