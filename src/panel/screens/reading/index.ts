export { Badge } from "./badge.tsx";
export { Choices } from "./choices.tsx";
export { Form, useEntry } from "./entry.tsx";
export { Field, Wrong } from "./field.tsx";
export { type Asked, otherVariant, saidOf, useFitted } from "./fitted.ts";
export { localeOf, showList, showPrice } from "./format.ts";
export { ReadingScreen } from "./reading.tsx";
export { Reminder } from "./reminder.tsx";
export { marks } from "./result.tsx";
