// SPDX-License-Identifier: GPL-3.0-or-later
#include "resources/resources.h"

#include <QDir>

// Q_INIT_RESOURCE must stand outside any namespace.
static void registerCompiledIn()
{
    Q_INIT_RESOURCE(ohmwright);
}

namespace ohmwright {

void registerResources()
{
    registerCompiledIn();
}

} // namespace ohmwright
