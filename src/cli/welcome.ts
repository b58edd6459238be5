/** What `stillband` alone says: what to do first. */
export const WELCOME = `stillband plans wireless DMX at 2.4 GHz from scans of the band.

First, scan where the receivers will hang, and give the scan to stillband:
  sudo iw dev wlan0 scan > hall.txt                  on a Linux laptop
  stillband channel --place hall --crowd empty hall.txt

Then:
  stillband survey hall.txt     what is on the band, how far to trust it
  stillband link                how far the radio goes with nothing on the band
  stillband profiles            the radio's figures; enter your own
  stillband --help              all commands
`;
