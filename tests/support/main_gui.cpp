// SPDX-License-Identifier: GPL-3.0-or-later
// main() of the test programs that draw, off any screen.
#include <QApplication>

#include <gmock/gmock.h>

#include "resources/resources.h"

int main(int argc, char **argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    testing::InitGoogleMock(&argc, argv);
    ohmwright::registerResources();
    const QApplication app(argc, argv);
    return RUN_ALL_TESTS();
}
