/*
 * The gallery: each turn is a page of its own in a frame of the chosen width, so that the panel finds the very room that it
 * would find on a phone. What is chosen stands in the address, so that it can be sent to somebody.
 */
const { places, languages } = await (await fetch("places.json")).json();
const form = document.querySelector("#choice");
const shown = document.querySelector("#shown");
const fields = form.elements;

/** Ids as words: `ice-bin` is "Ice bin". */
const worded = (id) => id.replaceAll("-", " ").replace(/^./, (first) => first.toUpperCase());

const groupOf = ({ name }) => name.split(".")[0];
const labelOf = (place) =>
  `${worded(groupOf(place))}: ${worded(place.name.slice(place.name.indexOf(".") + 1))}`;

for (const place of places) {
  const group = worded(groupOf(place));
  let list = fields.place.lastElementChild;
  if (list?.label !== group) {
    list = document.createElement("optgroup");
    list.label = group;
    fields.place.append(list);
  }
  list.append(new Option(labelOf(place), place.name));
}
for (const tag of languages) fields.language.append(new Option(tag));

const asked = new URLSearchParams(location.search);
for (const field of fields) {
  const value = field.name && asked.get(field.name);
  if (value && [...field.options].some((option) => option.value === value)) field.value = value;
}

/** A frame is as high as what is in it, which comes bit by bit. */
function fitHeight(frame) {
  const { body, documentElement } = frame.contentDocument;
  const fit = () => {
    frame.style.height = `${Math.max(240, Math.ceil(body.getBoundingClientRect().height))}px`;
  };
  new frame.contentWindow.ResizeObserver(fit).observe(body);
  const title = frame.contentDocument.querySelector("title");
  const name = () => {
    if (documentElement.dataset.stands)
      frame.closest("figure").querySelector("span").textContent = title.textContent;
  };
  new frame.contentWindow.MutationObserver(name).observe(documentElement, { attributes: true });
  name();
}

function figureOf(place) {
  const figure = document.createElement("figure");
  const caption = document.createElement("figcaption");
  const name = document.createElement("b");
  name.textContent = labelOf(place);
  caption.append(name, document.createElement("span"));
  const box = document.createElement("div");
  box.className = "box";
  // What is wider than the window is moved by keys too.
  box.tabIndex = 0;
  box.role = "group";
  box.ariaLabel = `${name.textContent}, ${fields.width.value} px wide`;
  const frame = document.createElement("iframe");
  frame.loading = "lazy";
  frame.title = name.textContent;
  frame.width = fields.width.value;
  const { language, theme } = fields;
  frame.src = `panel.html?${new URLSearchParams({ place: place.name, language: language.value, theme: theme.value })}`;
  frame.addEventListener("load", () => fitHeight(frame));
  box.append(frame);
  figure.append(caption, box);
  return figure;
}

const chosen = () => places.findIndex(({ name }) => name === fields.place.value);

function show() {
  const place = places[chosen()];
  const isShown = {
    one: (each) => each === place,
    group: (each) => groupOf(each) === groupOf(place),
    all: () => true,
  };
  shown.replaceChildren(...places.filter(isShown[fields.show.value]).map(figureOf));
  history.replaceState(null, "", `?${new URLSearchParams(new FormData(form))}`);
}

function go(by) {
  fields.place.value = places[(chosen() + by + places.length) % places.length].name;
  show();
}

form.addEventListener("change", show);
form.addEventListener("submit", (event) => event.preventDefault());
document.querySelector("#back").addEventListener("click", () => go(-1));
document.querySelector("#next").addEventListener("click", () => go(1));
show();
