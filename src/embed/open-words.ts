/**
 * The texts that a shop may put in its own words, by the first part of their keys. A star stands for one part of a key.
 * All others say what is dangerous, what to do, what was found or what is kept where, and stay ours: a shop that asks
 * and tells otherwise edits its flows, which are checked as a whole.
 */
export const openWords = [
  ...["ui.title", "ui.why", "ui.menu", "ui.shop", "ui.shop-help"],
  ...["ui.ice", "ui.ice-ask", "ui.ice-yes", "ui.help", "ui.help-ask", "ui.help-yes"],
  ...["ui.restart", "ui.restart-ask", "ui.restart-yes", "ui.cancel"],
  ...["thread.hello", "thread.full", "thread.full-close"],
  ...["composer.label", "composer.choices_one", "composer.choices_other", "composer.none-of-these"],
  ...["composer.yes", "composer.no", "composer.none"],
  "notices.welcome-back",
  ...["endings.fixed.heading", "endings.later.heading", "endings.part.heading"],
  ...["endings.professional.heading", "endings.no-cause.heading"],
  ...["endings.worth", "endings.worth-age", "endings.guarantee"],
  ...["who.shop.name", "who.shop.tell", "who.*.worth", "who.*.worth-age"],
  ...["part.who", "part.original", "part.compatible", "part.in-stock", "part.few", "part.out-of-stock"],
  ...["part.out-of-stock-said", "part.add", "part.adding", "part.added", "part.added-said", "part.basket"],
  ...["part.add-again", "part.failed", "part.no-part", "part.no-part-read", "part.broken", "part.ask-shop"],
  ...["part.ask-the-shop", "part.share", "part.print", "part.copy"],
  ...["asides.cost-part.says", "asides.cost-part.priced", "asides.cost-engineer.says"],
  ...["asides.cost-engineer.facts.call-out", "asides.cost-engineer.facts.hourly-rate"],
  ...["asides.cost-delivery.says", "asides.cost-delivery.facts.delivery"],
  ...["asides.cost-delivery.facts.delivery-none", "asides.cost-delivery.facts.free-delivery-from"],
  ...["asides.return-part.says", "asides.return-part.facts.return-days", "asides.open-hours.says"],
  ...["asides.open-hours.facts.opening-hours", "asides.open-hours.facts.opening-hours-there"],
  ...["asides.open-hours.facts.open", "asides.open-hours.facts.closed"],
  ...["asides.cost-filter.says", "asides.cost-filter.priced", "asides.how-long-repair.says"],
  ...["asides.worth-repair.says", "asides.warranty.says"],
  ...["asides.about-call.says", "asides.about-buy.says"],
];

/** Whether a shop may put this text in its own words. */
export function isOpen(key: string): boolean {
  const starred = key.replace(/^(\w+)\.[^.]+\./, "$1.*.");
  return openWords.includes(key) || (starred !== key && openWords.includes(starred));
}
