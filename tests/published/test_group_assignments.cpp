// The groups of each solvent must add up to its molecule: the molar mass tells a missing or doubled group.
#include "shipped_mixtures.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <map>

using namespace gentlest;
using namespace gentlest::test;

namespace {

struct Atoms {
  double C = 0, H = 0, O = 0, N = 0, Cl = 0, S = 0, Si = 0;
};

double mass_of(const Atoms& atoms) {
  return 12.011 * atoms.C + 1.008 * atoms.H + 15.999 * atoms.O + 14.007 * atoms.N + 35.45 * atoms.Cl + 32.06 * atoms.S +
         28.085 * atoms.Si;
}

// What each subgroup is made of; numbers 78 and above differ between the two sets.
const std::map<int, Atoms> common = {
    {1, {1, 3}},           {2, {1, 2}},           {3, {1, 1}},
    {4, {1, 0}},           {5, {2, 3}},           {6, {2, 2}},
    {7, {2, 2}},           {8, {2, 1}},           {9, {1, 1}},
    {10, {1, 0}},          {11, {2, 3}},          {12, {2, 2}},
    {13, {2, 1}},          {14, {0, 1, 1}},       {15, {1, 4, 1}},
    {16, {0, 2, 1}},       {18, {2, 3, 1}},       {19, {2, 2, 1}},
    {20, {1, 1, 1}},       {21, {2, 3, 2}},       {22, {2, 2, 2}},
    {23, {1, 1, 2}},       {24, {1, 3, 1}},       {25, {1, 2, 1}},
    {26, {1, 1, 1}},       {29, {1, 4, 0, 1}},    {32, {1, 3, 0, 1}},
    {35, {1, 2, 0, 1}},    {40, {2, 3, 0, 1}},    {41, {2, 2, 0, 1}},
    {42, {1, 1, 2}},       {43, {1, 2, 2}},       {44, {1, 2, 0, 0, 1}},
    {47, {1, 2, 0, 0, 2}}, {50, {1, 1, 0, 0, 3}}, {51, {1, 0, 0, 0, 3}},
    {52, {1, 0, 0, 0, 4}}, {53, {1, 0, 0, 0, 1}}, {54, {1, 3, 2, 1}},
    {55, {1, 2, 2, 1}},    {56, {1, 1, 2, 1}},    {58, {1, 0, 0, 0, 0, 2}},
    {61, {5, 4, 2}},       {62, {2, 6, 2}},       {67, {2, 6, 1, 0, 0, 1}},
    {69, {0, 0, 0, 0, 1}}, {70, {2, 0}},          {72, {3, 7, 1, 1}},
    {77, {1, 0, 2}},
};

const std::map<int, Atoms> original_only = {{27, {1, 2, 1}},
                                            {37, {5, 5, 0, 1}},
                                            {81, {0, 0, 0, 0, 0, 0, 1}},
                                            {84, {0, 0, 1, 0, 0, 0, 1}},
                                            {85, {5, 9, 1, 1}},
                                            {97, {3, 6, 1, 1}},
                                            {100, {2, 5, 2}},
                                            {101, {2, 4, 2}},
                                            {105, {4, 9, 1, 1}},
                                            {118, {2, 4, 2, 0, 0, 1}}};

const std::map<int, Atoms> modified_only = {
    {27, {2, 4, 1}}, {37, {2, 2, 0, 1}}, {78, {1, 2}},       {79, {1, 1}},        {80, {1, 0}},     {81, {0, 1, 1}},
    {82, {0, 1, 1}}, {83, {1.5, 3, 1}},  {86, {5, 9, 1, 1}}, {101, {3, 6, 1, 1}}, {112, {3, 6, 3}}, {113, {3, 4, 3}}};

double mass_of(const Groups& groups, const std::map<int, Atoms>& own) {
  double sum = 0;
  for (const GroupCount& group : groups) {
    INFO("subgroup " << group.subgroup);
    const auto found = own.find(group.subgroup);
    const auto shared = common.find(group.subgroup);
    REQUIRE((found != own.end() || shared != common.end()));
    sum += group.count * mass_of(found != own.end() ? found->second : shared->second);
  }
  return sum;
}

}  // namespace

TEST_CASE("groups of the original set add up to the recorded molar mass") {
  int compared = 0;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (solvent.unifac_groups.empty() || !solvent.molar_mass_g_per_mol) continue;
    ++compared;
    INFO(solvent.id);
    CHECK(mass_of(solvent.unifac_groups, original_only) == near(solvent.molar_mass_g_per_mol->chosen.value, 0.06));
  }
  CHECK(compared > 100);
}

TEST_CASE("groups of the modified set add up to the recorded molar mass") {
  int compared = 0;
  for (const MoleculeGroups& molecule : shipped_catalogue().chemistry().modified_groups) {
    const Solvent* solvent = shipped_catalogue().find_solvent(molecule.solvent);
    if (!solvent->molar_mass_g_per_mol) continue;
    ++compared;
    INFO(molecule.solvent);
    CHECK(mass_of(molecule.groups, modified_only) == near(solvent->molar_mass_g_per_mol->chosen.value, 0.06));
  }
  CHECK(compared > 100);
}
