// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/log.h"

#include <QDir>
#include <QStandardPaths>
#include <QString>

#include <spdlog/sinks/rotating_file_sink.h>
#include <spdlog/spdlog.h>

namespace ohmwright {

namespace {

// Qt 6.4 has no location for state; the base directory specification names it.
QString stateFolder()
{
    const QString set = qEnvironmentVariable("XDG_STATE_HOME");
    const QString base = set.isEmpty() ? QDir::homePath() + QStringLiteral("/.local/state") : set;
    return base + QStringLiteral("/ohmwright");
}

void toLog(QtMsgType type, const QMessageLogContext &context, const QString &message)
{
    const auto level = type == QtDebugMsg     ? spdlog::level::debug
                       : type == QtInfoMsg    ? spdlog::level::info
                       : type == QtWarningMsg ? spdlog::level::warn
                                              : spdlog::level::err;
    spdlog::log(level, "{}: {}", context.category ? context.category : "default",
                message.toStdString());
}

} // namespace

void startLog()
{
    const QString folder = stateFolder();
    if (!QDir().mkpath(folder))
        return;
    try {
        constexpr std::size_t kMegabyte = 1024UL * 1024UL;
        const std::string file = QString(folder + QStringLiteral("/ohmwright.log")).toStdString();
        spdlog::set_default_logger(spdlog::rotating_logger_mt("ohmwright", file, kMegabyte, 3));
        spdlog::set_level(spdlog::level::info);
        spdlog::flush_on(spdlog::level::warn);
        qInstallMessageHandler(toLog);
    } catch (const spdlog::spdlog_ex &) {
        // see the header: a person's book matters more than our log, and so does a quiet terminal
        spdlog::set_level(spdlog::level::off);
    }
}

} // namespace ohmwright
