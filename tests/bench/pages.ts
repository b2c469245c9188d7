/** The same page around both: only the script and the place it draws into differ. */
const page = (script: string, place: string) => `<!doctype html>
<html lang="en-GB">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Ice maker help</title>
    <link rel="icon" href="data:," />
    <link rel="stylesheet" href="page.css" />
    <script type="module" async src="${script}"></script>
  </head>
  <body>
    <h1>No ice?</h1>
    ${place}
    <p>The shop's own words go on here.</p>
  </body>
</html>`;

/** What a shop is told to write beside the tag: the place is kept free, so that nothing below it jumps. */
const style = "fridgeside-panel, #floor { display: block; min-height: 1040px }";

/** The measured pages by address, without their scripts. */
export const pages: Record<string, string> = {
  "ours.html": page(
    "fridgeside.en-GB.js",
    `<fridgeside-panel catalogue="catalogue.json" shop-name="A Shop"></fridgeside-panel>`,
  ),
  "floor.html": page("floor.js", `<div id="floor"></div>`),
  "page.css": style,
};
