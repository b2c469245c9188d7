// What a tag manager does when two of its rules fire: the snippet runs twice, with two addresses of the script.
function runSnippet(address) {
  const script = document.createElement("script");
  script.type = "module";
  script.src = address;
  document.head.append(script);
  const panel = document.createElement("fridgeside-panel");
  panel.setAttribute("shop-name", "Larder Lane Spares");
  panel.setAttribute("help-link", "../help.html");
  document.querySelector("#help").append(panel);
}

runSnippet("../fridgeside.js?from=manager");
runSnippet("../fridgeside.en-GB.js");
