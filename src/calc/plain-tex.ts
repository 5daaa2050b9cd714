/**
 * A formula line of a sheet as plain text for the terminal: `\frac{@reaction}{@spacing}` becomes `T_r / b`. It knows the
 * TeX that sheets use: fractions, roots, powers, subscripts, Greek letters, functions and cases. A command that it does
 * not know keeps its name.
 */
export function plainTex(tex: string): string {
  const tokens = tex.match(/\\[a-zA-Z]+|\\.|\s+|[\d.]+|[^\\]/gsu) ?? [];
  return sequence({ tokens, at: 0 })
    .replaceAll(/ +/g, ' ')
    .replaceAll(/([(|]) | (?=[),;])/g, '$1')
    .trim();
}

interface Reader {
  tokens: readonly string[];
  at: number;
}

/** A fraction may need brackets, depending on its neighbours. */
interface Piece {
  text: string;
  kind: 'atom' | 'fraction' | 'sign' | 'function';
}

const signs: Readonly<Record<string, string>> = {
  '\\cdot': ' · ',
  '\\times': ' × ',
  '\\pm': ' ± ',
  '\\le': ' ≤ ',
  '\\leq': ' ≤ ',
  '\\ge': ' ≥ ',
  '\\geq': ' ≥ ',
  '\\lt': ' < ',
  '\\gt': ' > ',
  '\\,': ' ',
  '\\;': ' ',
  '\\ ': ' ',
  '\\!': '',
  '\\quad': ' ',
  '\\\\': '; ',
  '&': ' where ',
  '-': '−',
  '\\lvert': '|',
  '\\rvert': '|',
  '\\%': '%',
};

const greek: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  varepsilon: 'ε',
  epsilon: 'ε',
  eta: 'η',
  theta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'µ',
  nu: 'ν',
  xi: 'ξ',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  varphi: 'φ',
  psi: 'ψ',
  omega: 'ω',
  Delta: 'Δ',
  Phi: 'Φ',
  Omega: 'Ω',
  infty: '∞',
};

const functions = new Set(['sin', 'cos', 'tan', 'sec', 'arcsin', 'arccos', 'arctan', 'min', 'max', 'lg', 'ln', 'exp']);
const words = new Set(['\\text', '\\mathrm', '\\operatorname']);

/** Reads up to the end or a closing brace. */
function sequence(reader: Reader): string {
  const pieces: Piece[] = [];
  while (reader.at < reader.tokens.length && reader.tokens[reader.at] !== '}')
    pieces.push(withScripts(piece(reader), reader));
  return pieces
    .map((p, i) =>
      p.kind === 'fraction' && !alone(pieces, i) ? `(${p.text})` : p.kind === 'function' ? `${p.text} ` : p.text,
    )
    .join('');
}

/** Whether a fraction stands between signs, so that it needs no brackets. */
function alone(pieces: readonly Piece[], i: number): boolean {
  const near = (step: 1 | -1) => {
    let k = i + step;
    while (pieces[k]?.text.trim() === '') k += step;
    return pieces[k];
  };
  const [before, after] = [near(-1), near(1)];
  return (
    (before === undefined || before.kind === 'sign') &&
    (after === undefined || (after.kind === 'sign' && !/^[([|]/.test(after.text)))
  );
}

/** No brackets are needed below a fraction line. */
const whole = /^(\S+|√?\((?:[^()]|\([^()]*\))*\))$/;

function piece(reader: Reader): Piece {
  const token = reader.tokens[reader.at++]!;
  const name = token.slice(1);
  if (token === '{') return { text: closing(reader), kind: 'atom' };
  if (token === '\\frac') {
    const [above, below] = [group(reader), group(reader)];
    return {
      text: `${/ [+−±] /.test(above) ? `(${above})` : above} / ${whole.test(below) ? below : `(${below})`}`,
      kind: 'fraction',
    };
  }
  if (token === '\\sqrt') return { text: `√${bracketed(group(reader))}`, kind: 'atom' };
  if (token === '\\bar') return { text: `${group(reader)}\u0304`, kind: 'atom' };
  if (words.has(token)) return { text: group(reader), kind: 'atom' };
  if (token === '\\begin' || token === '\\end') {
    group(reader);
    return { text: '', kind: 'sign' };
  }
  if (token === '\\left' || token === '\\right')
    return { text: reader.tokens[reader.at++]!.replace('.', ''), kind: 'sign' };
  if (token === '\\sum') return { text: 'Σ', kind: 'function' };
  if (token in signs) return { text: signs[token]!, kind: 'sign' };
  if (name in greek) return { text: greek[name]!, kind: 'atom' };
  if (functions.has(name)) return { text: name, kind: 'function' };
  if (/^[+=()[\]|,;<>]$/.test(token)) return { text: token, kind: 'sign' };
  return { text: token.startsWith('\\') ? ` ${name} ` : token, kind: 'atom' };
}

const superscripts: Readonly<Record<string, string>> = {
  '-': '⁻',
  '−': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].map((s, i) => [String(i), s])),
};

function withScripts(of: Piece, reader: Reader): Piece {
  const { tokens } = reader;
  while (tokens[reader.at] === '_' || tokens[reader.at] === '^') {
    const sign = tokens[reader.at++];
    const script = group(reader);
    const base = of.kind !== 'sign' && sign === '^' && / /.test(of.text) ? `(${of.text})` : of.text;
    const raised = /^[-−]?\d+$/.test(script)
      ? [...script].map((c) => superscripts[c]).join('')
      : `^${bracketed(script)}`;
    of = { kind: of.kind === 'function' ? 'function' : 'atom', text: base + (sign === '_' ? `_${script}` : raised) };
  }
  return of;
}

/** What stands in braces, or the one token that stands without. */
function group(reader: Reader): string {
  while (/^\s+$/.test(reader.tokens[reader.at] ?? '')) reader.at++;
  if (reader.tokens[reader.at] !== '{') return reader.at < reader.tokens.length ? piece(reader).text : '';
  reader.at++;
  return closing(reader);
}

function closing(reader: Reader): string {
  const text = sequence(reader);
  reader.at++;
  return text;
}

function bracketed(text: string): string {
  return /^[\p{L}\d._]+$/u.test(text) ? text : `(${text})`;
}
