/** From lamp to repair: causes, checks, remedies and cautions of the trade. */
package lampwise.service;
