// `gentlest page`: the page for whoever has no terminal.
#include "cli/commands.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "io/own_page.hpp"

namespace gentlest {

Answer command_page(const Request& request, Session& session) {
  if (session.surroundings.to_terminal && (!request.output || *request.output == "-"))
    throw InputError(Fault::usage, "the page is a file for a browser, not for a terminal",
                     "write: gentlest page --output gentlest.html");
  std::string page = own_page();
  if (page.empty())
    throw InputError(Fault::usage, "this program was built without the page",
                     "`./bootstrap page` in the source folder builds it, and the program built after that has it");
  return {std::move(page), 0};
}

}  // namespace gentlest
