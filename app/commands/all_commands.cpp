// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/commands/commands.h"

namespace ohmwright {

Commands allCommands()
{
    Commands commands;
    commands.push_back(makeCreateCommand());
    commands.push_back(makeLogPartCommand());
    commands.push_back(makeCompareCommand());
    commands.push_back(makeHoldUpsCommand());
    commands.push_back(makeForecastCommand());
    commands.push_back(makeChoicesCommand());
    commands.push_back(makeCalendarCommand());
    commands.push_back(makeBudgetCommand());
    commands.push_back(makeChecksCommand());
    commands.push_back(makeSheetCommand());
    commands.push_back(makeChartCommand());
    commands.push_back(makeHistoryCommand());
    commands.push_back(makeUndoCommand());
    commands.push_back(makeRedoCommand());
    commands.push_back(makeLoadCommand());
    commands.push_back(makeDumpCommand());
    commands.push_back(makeVerifyCommand());
    return commands;
}

} // namespace ohmwright
