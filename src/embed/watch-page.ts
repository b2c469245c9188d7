/**
 * Calls `changed` when the page may look different: the phone's own choice, a class or an attribute of its root, the
 * end of a slow change of its background, and its last style sheet. Returns a function that ends it.
 */
export function watchPage(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  // Pages switch by a class, a style or an attribute of their own naming.
  for (const root of [document.documentElement, document.body]) observer.observe(root, { attributes: true });
  const phone = matchMedia("(prefers-color-scheme: dark)");
  const faded = ({ propertyName }: TransitionEvent) => propertyName === "background-color" && changed();
  phone.addEventListener("change", changed);
  document.addEventListener("transitionend", faded);
  addEventListener("load", changed);
  return () => {
    observer.disconnect();
    phone.removeEventListener("change", changed);
    document.removeEventListener("transitionend", faded);
    removeEventListener("load", changed);
  };
}
