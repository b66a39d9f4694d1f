// Which files of a folder a mistyped name may have meant, and which of them are logs of tests. Internal to io and cli.
#pragma once

#include <string>
#include <vector>

namespace gentlest {

/// True of a file that begins as a log does, of whatever version.
bool is_log(const std::string& path);

/// The plain files in the folder of `path`, each written as `path` is: with its folder where one was typed. Empty where
/// the folder cannot be read; at most 2,000.
std::vector<std::string> files_beside(const std::string& path);

/// That of the files whose name is nearest to the one typed; empty where none is near.
std::string nearest_file(const std::string& path, const std::vector<std::string>& files);

/// The log that stands beside `path` and was probably meant by it; empty where there is none. Names that differ in
/// their digits only are two paintings, not a slip.
std::string log_meant_by(const std::string& path);

}  // namespace gentlest
