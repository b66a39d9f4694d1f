#include "report/ranges/shadow.hpp"

#include <cmath>

namespace gentlest {

namespace {

// A ray from the origin through this point of the triangle comes to RED 1 or less.
bool meets_bent(const Teas& u, const Sphere& sphere, const LocalReach& reach) {
  const Hansen unit{u.fd, u.fp, u.fh};
  const double longest = 2 * total({2 * sphere.centre.dD, sphere.centre.dP, sphere.centre.dH});
  const double per_step = std::min(0.1 * reach.length, 0.02 * sphere.R0);
  const double length = std::hypot(2 * u.fd, u.fp, u.fh);
  for (double at = per_step; at < longest; at += per_step) {
    const double t = at / length;
    if (relative_distance_RED({t * unit.dD, t * unit.dP, t * unit.dH}, sphere, reach) <= 1) return true;
  }
  return false;
}

}  // namespace

std::vector<Teas> shadow_in_triangle(const Sphere& sphere, const LocalReach& reach) {
  const Hansen& c = sphere.centre;
  const double scale2 = 4;  // the factor 4 on dD in Ra^2
  const double cc = scale2 * c.dD * c.dD + c.dP * c.dP + c.dH * c.dH;
  const double beyond = cc - sphere.R0 * sphere.R0;
  if (beyond <= 0) return {};
  // A ray t u meets the sphere where (u.c)^2 - (u.u)(c.c - R0^2) >= 0 in the scaled product, and t > 0.
  const auto meets = [&](const Teas& u) {
    if (!reach.places.empty()) return meets_bent(u, sphere, reach);
    const double uc = scale2 * u.fd * c.dD + u.fp * c.dP + u.fh * c.dH;
    const double uu = scale2 * u.fd * u.fd + u.fp * u.fp + u.fh * u.fh;
    return uc > 0 && uc * uc - uu * beyond >= 0;
  };
  const Teas middle = teas_fractions(c);
  constexpr int corners = 96;
  constexpr double farthest = 400;  // per cent; beyond the triangle in every direction
  std::vector<Teas> outline;
  for (int k = 0; k < corners; ++k) {
    const double angle = 2 * std::acos(-1.0) * k / corners;
    const double across = std::cos(angle);
    const double up = std::sin(angle);
    const auto at = [&](double r) {
      return Teas{middle.fd + r * across, middle.fp + r * up, middle.fh - r * (across + up)};
    };
    double inside = 0;
    double outside = farthest;
    for (int step = 0; step < (reach.places.empty() ? 40 : 14); ++step)
      (meets(at((inside + outside) / 2)) ? inside : outside) = (inside + outside) / 2;
    outline.push_back(at(inside));
  }
  return outline;
}

}  // namespace gentlest
