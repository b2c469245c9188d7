export { listOf, recordOf } from "./bounded.ts";
export { flowBounds } from "./bounds.ts";
export { type Algebra, fold, guardOf, type Named, NoMeaning, namesIn, type Path, spellOut } from "./fold.ts";
export { all, any, foldGuard, type Guard, type GuardAlgebra, not, type Statement } from "./guard.ts";
export { type Condition, condition, id, turnRef } from "./schema.ts";
export { type Truth, truthOf } from "./truth.ts";
