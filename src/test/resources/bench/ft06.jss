# Fisher and Thompson 1963 (in Muth and Thompson, Industrial Scheduling), six jobs on six machines; shortest makespan 55
6 6
2 1  0 3  1 6  3 7  5 3  4 6
1 8  2 5  4 10  5 10  0 10  3 4
2 5  3 4  5 8  0 9  1 1  4 7
1 5  0 5  2 5  3 3  4 8  5 9
2 9  1 3  4 5  5 4  0 3  3 1
1 3  3 3  5 9  0 10  4 4  2 1
