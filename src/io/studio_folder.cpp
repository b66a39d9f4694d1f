#include "io/studio_folder.hpp"

#include "io/file_kinds.hpp"
#include "io/files.hpp"
#include "io/job_file.hpp"
#include "io/log_names.hpp"
#include "io/reading_log.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <utility>

namespace gentlest {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_files = 5000;
constexpr std::size_t enough_to_tell = 4096;  // bytes

struct FilesOfFolder {
  std::vector<std::string> jobs, logs, tables, others;
};

bool is_same(const std::string& a, const std::string& b) {
  std::error_code error;
  return fs::equivalent(a, b, error) && !error;
}

std::string beginning_of(const std::string& path) {
  try {
    return read_bytes(path, most_bytes_of_a_file).substr(0, enough_to_tell);
  } catch (const InputError&) {
    return {};
  }
}

bool is_picture(const std::string& path) {
  return foreign_kind(beginning_of(path)).rfind("a picture", 0) == 0;
}

bool is_named_as_job(const std::string& path) {
  const std::string ending = fs::path(path).extension().string();
  return ending == ".yaml" || ending == ".yml";
}

// By folder, so that the only job and the only log of one belong together.
std::map<std::string, FilesOfFolder> files_by_folder(const std::string& path) {
  std::error_code error;
  if (!fs::is_directory(path, error))
    throw InputError(Fault::file,
                     {{{path, 0, 0},
                       fs::exists(path, error) ? "this is a file, not a folder" : "there is no such folder",
                       "name the folder of finished paintings",
                       {}}});
  std::vector<std::string> names;
  fs::recursive_directory_iterator entry(path, fs::directory_options::skip_permission_denied, error);
  for (; !error && entry != fs::recursive_directory_iterator() && names.size() < most_files; entry.increment(error)) {
    std::error_code unknown;
    if (entry->is_regular_file(unknown) && entry->path().filename().string().front() != '.')
      names.push_back(entry->path().string());
  }
  std::sort(names.begin(), names.end());
  std::map<std::string, FilesOfFolder> folders;
  for (const std::string& name : names) {
    FilesOfFolder& files = folders[fs::path(name).parent_path().string()];
    if (is_log(name))
      files.logs.push_back(name);
    else if (is_job(name) || is_named_as_job(name))
      files.jobs.push_back(name);
    else if (fs::path(name).extension() == ".csv")
      files.tables.push_back(name);
    else
      files.others.push_back(name);
  }
  return folders;
}

std::string log_of(const std::string& job, const FilesOfFolder& files) {
  const fs::path stem = fs::path(job).stem();
  for (const std::string& log : files.logs)
    if (fs::path(log).stem() == stem) return log;
  return files.jobs.size() == 1 && files.logs.size() == 1 ? files.logs.front() : std::string();
}

class FolderReader {
 public:
  FolderReader(const Catalogue& catalogue, const std::optional<std::string>& but_not)
      : catalogue_(catalogue), but_not_(but_not) {}

  StudioFolder run(const std::string& path) {
    for (const auto& [name, files] : files_by_folder(path)) take(files);
    if (folder_.paintings.empty() && !is_without_very_painting_) {
      std::vector<Diagnostic> faults = std::move(folder_.left_out);
      faults.push_back({{path, 0, 0},
                        "no finished painting was found here",
                        "put each job beside its log: pears.yaml and pears.log",
                        {}});
      throw InputError(Fault::file, std::move(faults));
    }
    return std::move(folder_);
  }

 private:
  void leave_out(const std::string& file, std::string message, std::string remedy = {}) {
    folder_.left_out.push_back({{file, 0, 0}, std::move(message), std::move(remedy), {}});
  }

  // One line a file: the first fault, and how many more there are.
  void leave_out(const std::string& file, const InputError& error) {
    Diagnostic fault = error.faults().front();
    if (fault.where.file.empty()) fault.where.file = file;
    fault.excerpt.clear();
    fault.remedy.clear();
    fault.message += "; the file is left out";
    if (const std::size_t more = error.faults().size() - 1; more > 0) fault.message += fmt::format(" ({} more)", more);
    folder_.left_out.push_back(std::move(fault));
  }

  void take(const FilesOfFolder& files) {
    std::vector<std::string> used;
    for (const std::string& job : files.jobs) {
      const std::string log = log_of(job, files);
      if (!log.empty()) used.push_back(log);
      if (but_not_ && is_same(job, *but_not_)) {
        is_without_very_painting_ = true;
        continue;
      }
      take_painting(job, log);
    }
    for (const std::string& log : files.logs)
      if (std::find(used.begin(), used.end(), log) == used.end())
        leave_out(log, "this log has no job beside it; it is left out");
    for (const std::string& table : files.tables) take_table(table);
    for (const std::string& other : files.others)
      if (!is_picture(other)) leave_out(other, "this is no job, no log and no shared table; it is left out");
  }

  void take_painting(const std::string& job, const std::string& log) {
    try {
      if (log.empty()) {
        load_job(read_text_file(job), job, catalogue_);  // a broken job is told as one
        return leave_out(job, "this job has no log beside it; it is left out");
      }
      StudioPainting painting;
      painting.name = fs::path(job).filename().string();
      painting.job = load_job(read_text_file(job), job, catalogue_);
      ReadingLog readings = read_log(log);
      for (Diagnostic& fault : readings.faults) {
        fault.excerpt.clear();
        fault.remedy.clear();
        folder_.left_out.push_back(std::move(fault));
      }
      if (readings.lines.empty()) return leave_out(log, "the log holds no reading; the painting is left out");
      painting.readings = std::move(readings.lines);
      folder_.paintings.push_back(std::move(painting));
    } catch (const InputError& error) {
      leave_out(job, error);
    }
  }

  void take_table(const std::string& table) {
    try {
      std::vector<Diagnostic> faults;
      const std::vector<SharedTest> tests = read_shared_table(read_text_file(table), table, catalogue_, faults);
      for (Diagnostic& fault : faults) folder_.left_out.push_back(std::move(fault));
      int number = 0;
      for (StudioPainting& painting : paintings_from(tests, fs::path(table).filename().string())) {
        painting.name += fmt::format(" {}", ++number);
        if (!painting.readings.empty()) folder_.paintings.push_back(std::move(painting));
      }
    } catch (const InputError& error) {
      leave_out(table, error);
    }
  }

  const Catalogue& catalogue_;
  const std::optional<std::string>& but_not_;
  bool is_without_very_painting_ = false;
  StudioFolder folder_;
};

}  // namespace

StudioFolder read_studio_folder(const std::string& path, const Catalogue& catalogue,
                                const std::optional<std::string>& but_not) {
  return FolderReader(catalogue, but_not).run(path);
}

StudioPainting read_studio_painting(const std::string& job, const std::string& log, const Catalogue& catalogue) {
  StudioPainting painting;
  painting.name = fs::path(job).filename().string();
  painting.job = load_job(read_text_file(job), job, catalogue);
  painting.readings = read_log(log).lines;
  return painting;
}

std::string log_beside(const std::string& job) {
  FilesOfFolder files;
  for (const std::string& name : files_beside(job)) {
    if (is_log(name)) files.logs.push_back(name);
    if (is_job(name)) files.jobs.push_back(name);
  }
  return log_of(job, files);
}

}  // namespace gentlest
