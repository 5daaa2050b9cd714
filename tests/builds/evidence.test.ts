import { readdirSync, readFileSync } from 'node:fs';
import exif from 'exifreader';
import { describe, expect, it } from 'vitest';
import { frontOf, notes, sedge, type Typed } from './demo.js';

/** Photos, papers and dates of the demo belong together. */

interface Shown {
  note: string;
  file: string;
  stage?: string;
  stages: [string, string][];
}

const list = (of: Typed | undefined): Typed[] => (of ?? []) as unknown as Typed[];
const shown = (what: 'photos' | 'papers'): Shown[] =>
  notes.flatMap((name) => {
    const front = frontOf(`notes/${name}`);
    return list(front[what]).map((one) => ({
      note: name,
      file: String(one['file']),
      ...(one['stage'] ? { stage: String(one['stage']) } : {}),
      stages: Object.entries(front['stages']!) as never,
    }));
  });

describe('what lies in the folder is used, and what is used lies there', () => {
  it.each(['photos', 'papers'] as const)('%s', (what) => {
    const named = new Set(
      [
        ...shown(what),
        ...(what === 'photos' ? list(frontOf('build.md')['photos']).map((p) => ({ file: String(p['file']) })) : []),
      ].map((one) => one.file),
    );
    expect(readdirSync(`${sedge}/${what}`).sort()).toEqual([...named].sort());
  });
});

describe('photos', () => {
  it('were taken within the stage that they are assigned to, by the clock of the camera', () => {
    const off = shown('photos')
      .filter((p) => p.stage)
      .filter((p) => {
        const at = p.stages.findIndex(([stage]) => stage === p.stage);
        const day = takenOn(p.file);
        return at < 0 || day < p.stages[at]![1] || day > (p.stages[at + 1]?.[1] ?? '9999');
      });
    expect(off.map((p) => [p.note, p.file, p.stage, takenOn(p.file)])).toEqual([]);
  });
  it('say in themselves that they are rendered, carry no position, and are no larger than a photo of a phone', () => {
    for (const file of readdirSync(`${sedge}/photos`)) {
      const bytes = readFileSync(`${sedge}/photos/${file}`);
      const tags = exif.load(bytes, { expanded: true });
      expect(String(tags.exif?.ImageDescription?.description), file).toBe('rendered illustration');
      expect(tags.gps, file).toBeUndefined();
      expect(bytes.length, file).toBeLessThan(400 * 1024);
    }
  });
});

describe('the stages of each note', () => {
  it('follow each other in time', () => {
    for (const name of notes) {
      const days = Object.values(frontOf(`notes/${name}`)['stages']!);
      expect(days, name).toEqual([...days].sort());
    }
  });
});

function takenOn(file: string): string {
  const tags = exif.load(readFileSync(`${sedge}/photos/${file}`));
  return String(tags['DateTimeOriginal']?.description).slice(0, 10).replaceAll(':', '-');
}
