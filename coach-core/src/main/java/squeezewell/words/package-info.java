/** What is said, apart from why: sentences in bundles beside the rooms that say them. */
package squeezewell.words;
