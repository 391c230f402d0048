// The runner of every test_*.cpp; see tests/run for the parts that are not C++.
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include "doctest/doctest.h"
