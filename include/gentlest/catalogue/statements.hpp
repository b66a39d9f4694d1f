// GHS statements by their codes: what each brings onto a label. A code that is not in the table brings nothing; its
// meaning then stands on the safety data sheet alone.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// What is known to be said of the pure liquid: its record's statements and supplements, with the flammable class that
/// its flash point asks for; without a record that class alone.
std::vector<std::string> known_statements(const Solvent& solvent);

/// Statement of the flammable category by CLP Annex I 2.6: below 23 C and boiling up to 35 C H224, below 23 C H225, up
/// to 60 C H226, else empty. An estimated flash point counts as 5 C lower (CLP Annex I 2.6.4.3, from memory).
std::string flammable_statement(Celsius flash_point, Celsius boiling_point, bool estimated);

/// The most severe of H224, H225 and H226 in the list; empty when it has none.
std::string flame_among(const std::vector<std::string>& statements);

/// True where one of the codes is one of these or narrower: H360FD is H360.
bool any_is(const std::vector<std::string>& codes, std::initializer_list<const char*> starts);

/// How bad statements are for the person, 0 to 5, by the worst of them. A convention of ours to put bottles and labels
/// in order, no published scale: 5 causes cancer, damages genes or the unborn, or kills in small amounts; 4 poisonous
/// or damages organs; 3 suspected of the former, may damage organs, burns skin or eyes; 2 harmful, deadly in the lungs,
/// allergy; 1 irritates or makes drowsy; 0 none of these. Fire does not count: every useful liquid burns.
int severity_of_statements(const std::vector<std::string>& statements);

/// The statement that makes it so, as it stands in the list; empty at 0.
std::string worst_statement(const std::vector<std::string>& statements);

// ---- What a statement brings with it. H360D and H360FD are found under H360 where they have no row of their own.

/// The code under which the table holds a GHS hazard or EUH statement, e.g. H360D for itself; empty when it does not.
std::string_view row_of_statement(const std::string& code);

/// "Danger" when one of the statements asks for it, else "Warning", else empty. Source: the label tables of CLP Annex
/// I, from memory; for EUH380 to EUH451 Regulation (EU) 2023/707, from memory.
std::string signal_word_of(const std::vector<std::string>& statements);

/// The pictograms of these statements, sorted, after CLP Article 26: no GHS07 beside GHS06, none for irritation of skin
/// or eyes beside GHS05, none for irritation or skin allergy where GHS08 stands for asthma.
std::vector<std::string> pictograms_of(const std::vector<std::string>& statements);

}  // namespace gentlest
