import { describe, expect, it } from "vitest";
import { putStillFigures } from "../../../server/figures/groups";
import { testService } from "../../service";

const circle = (bulge: number) => ["root", ...Array.from({ length: 13 }, (_, i) => {
  const t = (i * Math.PI) / 6;
  return `${((1 + Math.cos(t)) / 2).toFixed(5)} ${(bulge * Math.sin(t)).toFixed(5)}`;
})].join("\n");

describe("a file that a design reads", () => {
  const design = `foil own { file = "own.dat" }
material foam { density = 0.03 g/cm^3 }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = own ; panel p { span = 400 mm ; chord = 200 mm } ; skin { material = foam ; wall = 1 mm ; infill = 100 % } }`;

  it("changes what rests on it, and a comment in the design hides nothing of that", () => {
    const files: Record<string, string> = { "own.dat": circle(0.05) };
    const service = testService((uri) => files[uri], putStillFigures);
    const mass = () => service.analysis("d")!.finishNow().sets[0].value("mass.total")!.value;
    service.update({ uri: "d", version: 1, text: design });
    const thin = mass();
    files["own.dat"] = circle(0.1);
    service.update({ uri: "d", version: 2, text: `# a note\n${design}` });
    service.forget("own.dat");
    expect(mass() / thin).toBeGreaterThan(1.8);
  });
});

describe("a tolerance", () => {
  const parts = `item a { weight = 100 g ± 5 g ; at = (0 mm, 0 mm, 0 mm) }
loading light { }
loading heavy { item a { weight = 200 g ± 5 g } }
`;
  const names = (text: string) => {
    const service = testService(undefined, putStillFigures);
    service.update({ uri: "d", version: 1, text });
    return service.analysis("d")!.sets.map((set) => [...set.value("mass.total")!.spread!.keys()].join());
  };

  it("keeps its name while only comments and spaces change", () => {
    expect(names(`# one more line\n${parts.replace("100 g ± 5 g", "100 g   ±  5 g # weighed")}`.replace("# weighed ;", "# weighed\n"))).toEqual(names(parts));
  });
  it("that a loading writes is another one", () => {
    const [light, heavy] = names(parts);
    expect(light).not.toBe(heavy);
  });
  it("has one of its own for each ± in a value", () => {
    const two = "item a { weight = (40 g ± 3 g) + (60 g ± 4 g) ; at = (0 mm, 0 mm, 0 mm) }";
    expect(names(two)[0].split(",")).toHaveLength(2);
  });
});
