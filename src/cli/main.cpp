#include "cli/run.hpp"

#include <iostream>

int main(int argc, char** argv) {
  return gentlest::run({argv + (argc > 0 ? 1 : 0), argv + argc}, std::cin, std::cout, std::cerr,
                       gentlest::ask_system());
}
