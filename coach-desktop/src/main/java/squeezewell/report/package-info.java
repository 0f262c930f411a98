/** Reports of a review for people and for spreadsheets, and the words that all outputs share. */
package squeezewell.report;
