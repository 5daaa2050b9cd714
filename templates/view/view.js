import { become } from './become.js';

/* Follows the preview: takes changed parts in, keeps the reading place, marks what changed, lists what is wrong. */

const main = document.querySelector('main');
const state = document.getElementById('view-state');
const problemList = document.getElementById('view-problems');
const marked = 'view-changed';
const leaves = 'p, li, dt, dd, tr, caption, figure, h1, h2, h3, h4, h5, h6, .step';
const markable = `${leaves}, table, aside, section`;

const events = new EventSource(`/events?version=${encodeURIComponent(document.documentElement.dataset.version)}`);
events.addEventListener('shown', (event) => take(JSON.parse(event.data)));
events.addEventListener('error', () => {
  state.classList.add('view-lost');
  state.textContent = 'The preview has ended: what stands here is followed no longer.';
});
events.addEventListener('open', () => {
  if (state.classList.contains('view-lost')) state.textContent = 'The preview follows the files again.';
  state.classList.remove('view-lost');
});

function take(update) {
  showProblems(update.problems);
  const changed = keepingPlace(() => takeParts(update));
  if (update.title) document.title = update.title;
  document.body.classList.toggle('draft', update.draft);
  document.documentElement.dataset.version = update.version;
  if (update.saved.length > 0 || update.problems.length > 0) showState(update, changed);
}

/** Replaces, adds and removes parts; gives the elements that differ. */
function takeParts({ order, parts }) {
  if (order.length === 0) return [];
  const changed = new Set();
  const first = main.children.length === 0;
  if (Object.keys(parts).length > 0) unmark();
  for (const part of [...main.children]) if (!order.includes(part.id)) part.remove();
  order.forEach((id, i) => {
    const old = document.getElementById(id);
    const html = parts[id];
    const fresh =
      html === undefined ? undefined : new DOMParser().parseFromString(html, 'text/html').body.firstElementChild;
    const part = old ?? document.adoptNode(fresh);
    if (old && fresh) become(old, fresh, changed);
    else if (!old) changed.add(part);
    if (main.children[i] !== part) main.insertBefore(part, main.children[i] ?? null);
  });
  if (first) return [];
  const elements = [...new Set([...changed].map((node) => node.closest(markable) ?? node))].filter((e) => e !== main);
  for (const element of elements) element.classList.add(marked);
  return elements;
}

function unmark() {
  for (const { classList, attributes } of main.querySelectorAll(`.${marked}`)) {
    classList.remove(marked);
    if (classList.length === 0) attributes.removeNamedItem('class');
  }
}

/** What is read at the top of the window stays there, or else the nearest thing above it that has a name. */
function keepingPlace(work) {
  const read = [...Array(20).keys()]
    .map((i) => document.elementFromPoint(Math.min(innerWidth / 2, 400), 4 + 12 * i)?.closest(`main :is(${leaves})`))
    .find((e) => e);
  const named = read?.closest('[id]');
  const topOf = (element) => element.getBoundingClientRect().top;
  const [top, namedTop] = read ? [topOf(read), topOf(named)] : [];
  const result = work();
  const again = read && document.getElementById(named.id);
  const moved = read?.isConnected ? topOf(read) - top : again ? topOf(again) - namedTop : 0;
  if (scrollY > 0 && moved !== 0) scrollBy({ top: moved, behavior: 'instant' });
  return result;
}

function showState({ saved, problems }, changed) {
  const parts = new Map();
  for (const element of changed) {
    const part = element.closest('main > *');
    if (part) parts.set(part, (parts.get(part) ?? 0) + 1);
  }
  const time = new Date().toLocaleTimeString('en-GB');
  const files = saved.slice(0, 3).join(', ') + (saved.length > 3 ? ` and ${saved.length - 3} more` : '');
  const begin = files === '' ? '' : `${time}  ${files} saved. `;
  if (problems.length > 0)
    return void state.replaceChildren(`${begin}The last document that could be made stands above.`);
  if (parts.size === 0) return void state.replaceChildren(`${begin}Nothing in the document differs.`);
  const links = [...parts].flatMap(([part, count], i) => {
    const target = part.querySelector(`.${marked}`) ?? part;
    const link = Object.assign(document.createElement('a'), {
      href: `#${part.id}`,
      textContent: part.querySelector('h1, h2')?.textContent ?? part.id,
    });
    link.addEventListener('click', (event) => {
      event.preventDefault();
      target.scrollIntoView({ block: 'center' });
    });
    return [i === 0 ? '' : ', ', link, count === 1 ? '' : ` (${count} places)`];
  });
  state.replaceChildren(`${begin}Changed: `, ...links, '.');
}

function showProblems(problems) {
  problemList.hidden = problems.length === 0;
  const heading = Object.assign(document.createElement('h2'), {
    textContent:
      problems.length === 1
        ? 'One problem keeps the notes from being read'
        : `${problems.length} problems keep the notes from being read`,
  });
  const list = document.createElement('ol');
  for (const problem of problems) list.append(problemItem(problem));
  problemList.replaceChildren(heading, list);
}

function problemItem({ file, line, column, endColumn, found, expected, hint, source }) {
  const item = document.createElement('li');
  const where = document.createElement('b');
  const chapter = document.getElementById(`note-${file.split('/').at(-1).replace(/\.md$/, '')}`);
  where.append(chapter ? Object.assign(document.createElement('a'), { href: `#${chapter.id}` }) : '');
  (where.firstElementChild ?? where).textContent = line > 0 ? `${file}:${line}:${column}` : file;
  item.append(where, `: found ${found}, expected ${expected}`);
  if (hint) item.append(Object.assign(document.createElement('div'), { textContent: `Hint: ${hint}` }));
  if (line > 0 && source) {
    const caret = `${' '.repeat(Math.max(0, column - 1))}${'^'.repeat(Math.max(1, (endColumn ?? column + 1) - column))}`;
    item.append(
      Object.assign(document.createElement('pre'), { textContent: `${source.replaceAll('\t', ' ')}\n${caret}` }),
    );
  }
  return item;
}
