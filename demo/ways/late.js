// Adds the panel once somebody asks for it. Until then a visitor has fetched none of it.
const button = document.querySelector("#open");

button.addEventListener("click", () => {
  const panel = document.createElement("fridgeside-panel");
  panel.setAttribute("shop-name", "Larder Lane Spares");
  panel.setAttribute("help-link", "../help.html");
  document.querySelector("#help").append(panel);
  button.remove();
  import("../fridgeside.en-GB.js");
});
