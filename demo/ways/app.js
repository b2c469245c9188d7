// A router as small as can be: each page is a template, drawn into the main part.
const main = document.querySelector("main");
let shown = "";

function draw() {
  const asked = new URLSearchParams(location.search).get("page");
  const page = asked === "help" ? "help" : "parts";
  // In full screen the panel has entries of its own for this address: there is nothing to draw for those.
  if (page === shown) return;
  shown = page;
  main.replaceChildren(document.querySelector(`#${page}`).content.cloneNode(true));
  for (const link of document.querySelectorAll("header [data-route]"))
    link.toggleAttribute("aria-current", link.href.endsWith(page));
}

document.addEventListener("click", (event) => {
  const link = event.target.closest("a[data-route]");
  if (!link) return;
  event.preventDefault();
  history.pushState(null, "", link.href);
  scrollTo(0, 0);
  draw();
});
addEventListener("popstate", draw);
draw();
