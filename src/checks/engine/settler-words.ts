import { metaAt } from '../../project/find-field.js';
import type { Build } from '../../project/model.js';
import { buildSchema } from '../../project/vehicle.js';
import type { Finding } from './finding.js';
import { groupsBySettler, inconclusiveOf, type SettledTogether } from './inconclusive.js';
import type { Kind } from './kind.js';

/** The inconclusive findings of a build, grouped by the one measurement or test that would settle most of them, in words. */
export function settledTogether(
  findings: readonly Finding[],
  build: Build,
  kinds: ReadonlyMap<string, Kind>,
): SettledTogether[] {
  return groupsBySettler(inconclusiveOf(findings), (f) => settlerWords(f, build, kinds));
}

/** What would settle a finding by itself; where nothing more is known of it, what is to be done about it. */
function settlerWords(f: Finding, build: Build, kinds: ReadonlyMap<string, Kind>): string[] {
  if (!f.settledBy) return f.todo ? [f.todo] : [];
  return f.settledBy.map((one) => ('words' in one ? one.words : measurementWords(one.source, build, kinds)));
}

/** What a source of uncertainty is: the field that was measured, with its note and its key; other sources by their own names. */
function measurementWords(source: string, build: Build, kinds: ReadonlyMap<string, Kind>): string {
  const at = source.lastIndexOf('#');
  const [file, path] = [source.slice(0, at), source.slice(at + 1)];
  const note = build.notes.find((n) => n.file === file);
  const shape = note ? kinds.get(note.kind)?.shape : file === build.file ? buildSchema.shape : undefined;
  if (at < 0 || !shape) return `${source}, known better`;
  const { says } = metaAt(shape, path.split('.'));
  const where = `\`${path}\` of ${note?.name ?? 'build.md'}`;
  return says ? `${says}, measured more closely (${where})` : `${where}, measured more closely`;
}

/** What a group says of itself, without its findings. */
export function groupSays({ by, findings }: SettledTogether, of: number): string {
  const count = `${findings.length} of ${of} inconclusive finding${of === 1 ? '' : 's'}`;
  if (by.length === 0) return `No single measurement would settle ${count}`;
  const [first, ...others] = by;
  const words = others.length > 0 ? `${first} (or ${others.join('; or ')})` : first!;
  const comma = words.includes(',') ? ',' : '';
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${comma} would settle ${count}`;
}
