/** The table of one kind of unit: each lamp state, its rhythm and its meaning. */
package lampwise.sheet;
