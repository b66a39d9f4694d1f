// What the commands that print on paper share: the size of the sheet, the picture behind the map, the options used.
#pragma once

#include "cli/options.hpp"
#include "report/tested/test_map.hpp"
#include "report/draw/html.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Commands that make pictures or pages refuse --format csv and json. Throws InputError (Fault::usage).
void expect_picture(const Request& request, const std::string& made);

/// The paper of the command line, or A4. Throws InputError (Fault::usage).
Paper asked_paper(const Request& request);

/// The picture of --background. Throws InputError (Fault::file).
std::optional<MapBackground> background_of(const Request& request);

/// The options that changed the result, as they would be typed again.
std::vector<std::string> options_used(const Request& request);

}  // namespace gentlest
