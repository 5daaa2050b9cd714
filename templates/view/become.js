/** Makes the old node what the fresh one is, and touches only what differs; what that is is added to `changed`. */
export function become(old, fresh, changed) {
  if (old.isEqualNode(fresh)) return;
  if (
    old.nodeType !== Node.ELEMENT_NODE ||
    old.nodeName !== fresh.nodeName ||
    old instanceof SVGElement ||
    old.nodeName === 'math'
  ) {
    note(changed, old, old.parentElement);
    old.replaceWith(document.adoptNode(fresh));
    return;
  }
  for (const { name } of [...old.attributes]) if (!fresh.hasAttribute(name)) old.removeAttribute(name);
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) === value) continue;
    old.setAttribute(name, value);
    changed.add(old);
  }
  const [before, now] = [[...old.childNodes], [...fresh.childNodes]];
  while (before.length > 0 && now.length > 0 && before[0].isEqualNode(now[0])) before.shift(), now.shift();
  let same = 0;
  for (; before.length > 0 && now.length > 0 && before.at(-1).isEqualNode(now.at(-1)); same += 1)
    before.pop(), now.pop();
  const waiting = new Set(before);
  let place = before[0] ?? old.childNodes[old.childNodes.length - same] ?? null;
  for (const node of now) {
    const match = [...waiting].find((w) => w.nodeName === node.nodeName && (w.id ?? '') === (node.id ?? ''));
    if (match) {
      waiting.delete(match);
      if (match === place) place = place.nextSibling;
      else old.insertBefore(match, place);
      become(match, node, changed);
    } else {
      old.insertBefore(document.adoptNode(node), place);
      note(changed, node, node.nodeType === Node.ELEMENT_NODE ? node : old);
    }
  }
  for (const gone of waiting) {
    note(changed, gone, old);
    gone.remove();
  }
}

/** Space between elements shows nothing. */
function note(changed, { nodeType, data }, element) {
  if (nodeType === Node.ELEMENT_NODE || data?.trim()) changed.add(element);
}
