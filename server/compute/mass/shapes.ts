import type { Body } from "../../model/design/geometry";
import { bodyShell, bodyVolume, type BodyForm } from "./body";
import type { Moments } from "./moments";
import { panelSkin, panelVolume, type PlacedPanel } from "./panel";
import { sectionSlices } from "./section";

/**
 * Works out the shape of each panel, body and section once, however often its mass is asked for while tolerances are
 * carried through. Panels and stations are known by identity, which a settled model keeps for what a variable doesn't move.
 */
export class Shapes {
  private readonly slices = sectionSlices();
  private readonly faces = new Map<object, Moments>();
  private readonly insides = new Map<object, Moments>();
  private readonly shells = new Map<Body["stations"], Known>();
  private readonly volumes = new Map<Body["stations"], Known>();

  panelSkin(placed: PlacedPanel): Moments {
    return remembered(this.faces, placed, () => panelSkin(placed, this.slices));
  }

  panelVolume(placed: PlacedPanel): Moments {
    return remembered(this.insides, placed, () => panelVolume(placed, this.slices));
  }

  bodyShell(body: BodyForm): Moments {
    return rememberedAt(this.shells, body, bodyShell);
  }

  bodyVolume(body: BodyForm): Moments {
    return rememberedAt(this.volumes, body, bodyVolume);
  }
}

interface Known {
  readonly nose: Body["nose"];
  readonly shape: Body["shape"];
  readonly moments: Moments;
}

function remembered(shelf: Map<object, Moments>, { panel }: PlacedPanel, work: () => Moments): Moments {
  let found = shelf.get(panel);
  if (!found) shelf.set(panel, (found = work()));
  return found;
}

function rememberedAt(shelf: Map<Body["stations"], Known>, body: BodyForm, work: (body: BodyForm) => Moments): Moments {
  const known = shelf.get(body.stations);
  if (known && known.nose === body.nose && known.shape === body.shape) return known.moments;
  const moments = work(body);
  shelf.set(body.stations, { nose: body.nose, shape: body.shape, moments });
  return moments;
}
