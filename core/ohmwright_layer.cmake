# SPDX-License-Identifier: GPL-3.0-or-later
# A layer is a target, and its link list is what it may include (tests/core/layers holds
# the include lines to the same list).

add_library(ohmwright_warnings INTERFACE)
target_compile_options(ohmwright_warnings INTERFACE
    -Wall -Wextra -Wpedantic -Werror -Wshadow -Wconversion -Wno-sign-conversion
    -Wnon-virtual-dtor -Woverloaded-virtual -Wunused-result -Wimplicit-fallthrough)
target_compile_definitions(ohmwright_warnings INTERFACE
    QT_NO_CAST_TO_ASCII QT_NO_FOREACH QT_USE_QSTRINGBUILDER
    # sqlite3.h hides the session extension without these
    SQLITE_ENABLE_SESSION SQLITE_ENABLE_PREUPDATE_HOOK)
if(OHMWRIGHT_SANITIZE)
    target_compile_options(ohmwright_warnings INTERFACE
        -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer
        # with sanitizers g++ 12 takes the inside of an empty optional for uninitialised
        -Wno-maybe-uninitialized)
    target_link_options(ohmwright_warnings INTERFACE -fsanitize=address,undefined)
endif()

# ohmwright_layer(<name> LINK <targets…>)
# Makes the static library ohmwright_<name> from every source in the calling folder and below.
# A file belongs to the layer whose folder it stands in, so the list of files is the folder itself.
function(ohmwright_layer name)
    cmake_parse_arguments(ARG "" "" "LINK" ${ARGN})
    file(GLOB_RECURSE sources CONFIGURE_DEPENDS *.cpp *.h)
    if(sources MATCHES "\\.cpp")
        add_library(ohmwright_${name} STATIC ${sources})
        set(scope PUBLIC)
    else()
        add_library(ohmwright_${name} INTERFACE)
        set(scope INTERFACE)
    endif()
    target_include_directories(ohmwright_${name} ${scope} ${PROJECT_SOURCE_DIR})
    target_link_libraries(ohmwright_${name} ${scope} ohmwright_warnings ${ARG_LINK})
endfunction()
