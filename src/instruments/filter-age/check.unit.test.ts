import { describe, expect, test } from "vitest";
import { checkFilterUse } from "./check.ts";
import { filterLifeLimits as limits } from "./example-limits.ts";
import type { FilterUse } from "./reading.ts";

describe("a use that cannot be", () => {
  const check = (use: Partial<FilterUse>) => checkFilterUse({ people: 2, habit: "all", ...use }, limits);

  test("nobody at all, and more people than a home has, are refused", () => {
    expect(check({ people: 0 })).toMatchObject({ field: "people", code: "zero" });
    expect(check({ people: 21 })).toMatchObject({ field: "people", code: "too-large", max: 20 });
    expect(check({ people: 1 })).toBeNull();
  });

  test("a print that no cartridge has is refused; none at all is fine", () => {
    expect(check({ capacity: 49 })).toMatchObject({ field: "capacity", code: "too-small", min: 50 });
    expect(check({ capacity: 10_001 })).toMatchObject({ field: "capacity", code: "too-large" });
    expect(check({ capacity: undefined })).toBeNull();
    expect(check({ capacity: 757 })).toBeNull();
  });
});
