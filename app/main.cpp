#include "app/program.h"

int main(int argc, char** argv)
{
    return plumule::app::runProgram(argc, argv);
}
