// SPDX-License-Identifier: GPL-3.0-or-later
// One maker for each command; allCommands() lists them.
#pragma once

#include "app/command.h"

namespace ohmwright {

std::unique_ptr<Command> makeCreateCommand();
std::unique_ptr<Command> makeLoadCommand();
std::unique_ptr<Command> makeDumpCommand();
std::unique_ptr<Command> makeHoldUpsCommand();
std::unique_ptr<Command> makeForecastCommand();
std::unique_ptr<Command> makeCalendarCommand();
std::unique_ptr<Command> makeChoicesCommand();
std::unique_ptr<Command> makeBudgetCommand();
std::unique_ptr<Command> makeChecksCommand();
std::unique_ptr<Command> makeSheetCommand();
std::unique_ptr<Command> makeChartCommand();
std::unique_ptr<Command> makeCompareCommand();
std::unique_ptr<Command> makeHistoryCommand();
std::unique_ptr<Command> makeUndoCommand();
std::unique_ptr<Command> makeRedoCommand();
std::unique_ptr<Command> makeVerifyCommand();
std::unique_ptr<Command> makeLogPartCommand();

} // namespace ohmwright
