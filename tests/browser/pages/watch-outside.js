/*
 * Notes what changes on a page outside the panel, from before the panel is put in: nodes, attributes, and what everything
 * looks like. What an element's room depends on (its own size and what it is turned around) is left out: the panel takes room.
 */
const panelIn = (node) => node.nodeName === "FRIDGESIDE-PANEL";
const changed = [];
new MutationObserver((records) => {
  for (const { type, target, addedNodes, removedNodes, attributeName } of records) {
    if (panelIn(target) || target.id === "sheet") continue;
    // The journal's page says its language, its colours and where it stands.
    if (type === "attributes" && target === document.documentElement) continue;
    if (target.closest?.("head")) {
      if (target.localName === "meta" || target.localName === "title") continue;
    }
    if ([...addedNodes, ...removedNodes].length > 0 && [...addedNodes, ...removedNodes].every(panelIn))
      continue;
    changed.push(
      `${type} ${attributeName ?? ""} ${target.nodeName} ${[...addedNodes].map((each) => each.outerHTML ?? each.data)}`,
    );
  }
}).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });

const ofRoom =
  /^(width|height|block-size|inline-size|perspective-origin|transform-origin|grid-template|inset|top|left|right|bottom)/;

function looksOutside() {
  const all = [...document.querySelectorAll("body, body *")].filter((each) => !panelIn(each));
  return all.map((element) => {
    const computed = getComputedStyle(element);
    return [...computed]
      .filter((name) => !name.startsWith("--") && !ofRoom.test(name))
      .map((name) => `${element.localName} ${name}: ${computed.getPropertyValue(name)}`);
  });
}

const before = looksOutside();

/** What is not as it was before the panel came, a line each. */
window.changesOutside = () => {
  // What one of the page's sheets has set in motion goes on when another has taken its place.
  for (const each of document.getAnimations()) each.cancel();
  return [
    ...changed,
    ...looksOutside().flatMap((now, place) => now.filter((line, at) => line !== before[place]?.[at])),
    ...(document.adoptedStyleSheets.length ? ["a sheet was adopted"] : []),
  ];
};
