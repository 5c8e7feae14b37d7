import { gaussLegendre, integrate } from './gauss-legendre.ts'
import type { Head } from './heads.ts'

/** For the knuckle of a lying head: 12 nodes leave less than 1e-13 of the liquid there (a test compares with an adaptive integration). */
export const KNUCKLE_RULE = gaussLegendre(12)

/** The profile of a torispherical head, per unit of diameter: a spherical crown that runs tangent into a toroidal knuckle. */
export interface Torisphere {
  /** Radius of the crown. */
  readonly crown: number
  /** Radius of the knuckle. */
  readonly knuckle: number
  /** Radius of the circle on which the knuckle's centres lie, in the plane of the tangent line. */
  readonly ring: number
  /** The crown's centre lies this far behind the tangent line. */
  readonly centre: number
  /** Crown and knuckle touch on a circle of this radius, this far from the tangent line. */
  readonly touchRadius: number
  readonly touchDepth: number
  /** From that circle to the innermost point. */
  readonly crownHeight: number
}

function torisphere(crown: number, knuckle: number): Torisphere {
  const ring = 0.5 - knuckle
  const centre = Math.sqrt((crown - knuckle) ** 2 - ring ** 2)
  const touchDepth = (knuckle * centre) / (crown - knuckle)
  const touchRadius = ring + (knuckle * ring) / (crown - knuckle)
  return { crown, knuckle, ring, centre, touchRadius, touchDepth, crownHeight: crown - centre - touchDepth }
}

/**
 * A torispherical head of a crown and a knuckle radius, per unit of diameter.
 * Volumes and surface are exact but for the knuckle of a lying head, which is integrated by {@link KNUCKLE_RULE}.
 */
export function torisphericalHead(crown: number, knuckle: number): Head {
  const profile = torisphere(crown, knuckle)
  const { ring, centre, touchDepth, touchRadius, crownHeight } = profile
  const depth = touchDepth + crownHeight

  /** Volume of the knuckle's part between the tangent line and a plane this far from it: ∫ π r² dz, r = ring + √(k² − z²). */
  const ringVolume = (z: number) =>
    Math.PI * ((ring ** 2 + knuckle ** 2) * z - z ** 3 / 3 + ring * (z * Math.sqrt(knuckle ** 2 - z ** 2) + knuckle ** 2 * Math.asin(z / knuckle)))
  const capVolume = (height: number) => Math.PI * height ** 2 * (crown - height / 3)

  /**
   * The column over a circle segment, up to the crown, less what lies behind the tangent line. `chord` is the distance of the surface from the axis.
   * ∬ √(f² − x² − y²) dx dy over the segment of radius r beyond the chord has the closed form below.
   */
  const underCrown = (chord: number) => {
    if (chord >= touchRadius) return 0
    const halfChord = Math.sqrt(touchRadius ** 2 - chord ** 2)
    const angle = Math.acos(chord / touchRadius)
    const cosine = centre + touchDepth // distance from the crown's centre to the plane of the touching circle
    const segment = touchRadius ** 2 * angle - chord * halfChord
    const column =
      (cosine / 2) * segment -
      (crown ** 2 * chord - chord ** 3 / 3) * Math.atan2(halfChord, cosine) +
      (cosine / 6) * (touchRadius ** 2 * angle + chord * halfChord) -
      (2 / 3) * crown ** 2 * cosine * angle +
      (2 / 3) * crown ** 3 * Math.atan2(crown * halfChord, cosine * chord)
    return column - centre * segment
  }

  /**
   * Shells about the axis: ∫ z(r) · 2 r arccos(w/r) dr from where crown and knuckle touch, or from the chord, to the wall.
   * √(r² − w²) = m sin ψ with m the half-width of the surface at the wall takes the square roots out of both ends.
   */
  const underKnuckle = (chord: number, halfWidth: number) => {
    const from = Math.asin(Math.min(1, Math.sqrt(Math.max(0, touchRadius ** 2 - chord ** 2)) / halfWidth))
    const integrand = (psi: number) => {
      const s = halfWidth * Math.sin(psi)
      const r = Math.hypot(chord, s)
      return Math.sin(psi) * Math.cos(psi) ** 2 * Math.sqrt((r - ring + knuckle) / (r + 0.5)) * Math.atan2(s, chord)
    }
    return 2 * halfWidth ** 3 * integrate(integrand, from, Math.PI / 2, KNUCKLE_RULE)
  }

  const volume = ringVolume(touchDepth) + capVolume(crownHeight)
  return {
    torisphere: profile,
    depth,
    volume,
    surface: 2 * Math.PI * (crown * crownHeight + knuckle * (ring * Math.asin(touchDepth / knuckle) + touchDepth)),
    lying: (level) => {
      const halfWidth = Math.sqrt(level * (1 - level))
      return halfWidth === 0 ? 0 : underCrown(0.5 - level) + underKnuckle(0.5 - level, halfWidth)
    },
    standing: (level) => (level <= crownHeight ? capVolume(level) : volume - ringVolume(depth - level)),
  }
}
